-- The tables of all plants and months as views, for the questions beside this file. Run it where the folder fleet/ lies.
-- Plant and month come from the path; both are text, whatever they look like.
CREATE OR REPLACE VIEW conveyors AS SELECT * FROM read_parquet('fleet/conveyors/*/*/*.parquet',
  hive_partitioning = true, hive_types = {'plant': VARCHAR, 'month': VARCHAR}, union_by_name = true);
CREATE OR REPLACE VIEW points AS SELECT * FROM read_parquet('fleet/points/*/*/*.parquet',
  hive_partitioning = true, hive_types = {'plant': VARCHAR, 'month': VARCHAR}, union_by_name = true);
CREATE OR REPLACE VIEW readings AS SELECT * FROM read_parquet('fleet/readings/*/*/*.parquet',
  hive_partitioning = true, hive_types = {'plant': VARCHAR, 'month': VARCHAR}, union_by_name = true);
CREATE OR REPLACE VIEW decisions AS SELECT * FROM read_parquet('fleet/decisions/*/*/*.parquet',
  hive_partitioning = true, hive_types = {'plant': VARCHAR, 'month': VARCHAR}, union_by_name = true);
CREATE OR REPLACE VIEW outages AS SELECT * FROM read_parquet('fleet/outages/*/*/*.parquet',
  hive_partitioning = true, hive_types = {'plant': VARCHAR, 'month': VARCHAR}, union_by_name = true);
CREATE OR REPLACE VIEW orders AS SELECT * FROM read_parquet('fleet/orders/*/*/*.parquet',
  hive_partitioning = true, hive_types = {'plant': VARCHAR, 'month': VARCHAR}, union_by_name = true);
CREATE OR REPLACE VIEW findings AS SELECT * FROM read_parquet('fleet/findings/*/*/*.parquet',
  hive_partitioning = true, hive_types = {'plant': VARCHAR, 'month': VARCHAR}, union_by_name = true);
CREATE OR REPLACE VIEW jobs AS SELECT * FROM read_parquet('fleet/jobs/*/*/*.parquet',
  hive_partitioning = true, hive_types = {'plant': VARCHAR, 'month': VARCHAR}, union_by_name = true);
CREATE OR REPLACE VIEW steps AS SELECT * FROM read_parquet('fleet/steps/*/*/*.parquet',
  hive_partitioning = true, hive_types = {'plant': VARCHAR, 'month': VARCHAR}, union_by_name = true);

-- The newest month of each plant, and the one that was written before it.
CREATE OR REPLACE VIEW newest AS SELECT plant, max(month) AS month FROM conveyors GROUP BY plant;
CREATE OR REPLACE VIEW before_newest AS SELECT c.plant, max(c.month) AS month
  FROM conveyors c JOIN newest n ON c.plant = n.plant AND c.month < n.month GROUP BY c.plant;

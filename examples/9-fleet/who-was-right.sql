-- Who was right? Each month's forecast of a point against the newest thickness that was read of the same liner after that month's
-- day: what was expected at that exposure with its 80 % interval, and how many of the readings fell into it.
WITH told AS (
  SELECT p.plant, p.month, p.conveyor, p.point, p.as_of, p.readings AS readings_then,
         r.date, r.thickness_mm,
         p.fitted_mm - coalesce(p.wear_mm, 0) AS left_then,
         (r.exposure - coalesce(p.wear_exposure, 0)) / 1000 AS ahead,
         p.rate_mm_per_1000_p10 AS slow, p.rate_mm_per_1000_p50 AS rate, p.rate_mm_per_1000_p90 AS fast,
         coalesce(r.error_mm, 0.5) AS gauge, coalesce(p.wear_error_mm, 0) AS error_then,
         row_number() OVER (PARTITION BY p.plant, p.month, p.conveyor, p.point ORDER BY r.date DESC, r.exposure DESC) AS newest_first
  FROM points p
  JOIN newest n ON n.plant = p.plant AND p.month < n.month
  JOIN readings r ON r.plant = n.plant AND r.month = n.month
    AND r.conveyor = p.conveyor AND r.point = p.point AND r.kind = 'thickness'
    AND r.date > p.as_of AND r.fitted_on IS NOT DISTINCT FROM p.fitted_on
  WHERE p.rate_mm_per_1000_p50 IS NOT NULL AND r.exposure > coalesce(p.wear_exposure, 0)
),
judged AS (
  SELECT *, left_then - rate * ahead AS expected_mm,
         1.2816 * sqrt(gauge * gauge + error_then * error_then + power((fast - slow) / 2.5631 * ahead, 2)) AS within_mm
  FROM told WHERE newest_first = 1
)
SELECT plant, month, conveyor, count(*) AS points, sum(readings_then) AS readings_then,
       round(avg(thickness_mm - expected_mm), 3) AS mean_miss_mm,
       sum(CASE WHEN abs(thickness_mm - expected_mm) <= within_mm THEN 1 ELSE 0 END) AS in_80_percent,
       sum(CASE WHEN thickness_mm < expected_mm - within_mm THEN 1 ELSE 0 END) AS worn_more,
       sum(CASE WHEN thickness_mm > expected_mm + within_mm THEN 1 ELSE 0 END) AS worn_less
FROM judged
GROUP BY plant, month, conveyor
ORDER BY plant, month, conveyor;

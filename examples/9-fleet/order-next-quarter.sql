-- What is to be ordered within three months over all plants, the most urgent first? Late orders are in it.
SELECT o.order_by, o.is_late, o.plant, o.conveyor, o.liner, o.scope, o.outage, o.lead_time_days,
       c.limit_on_p10, c.limit_on_p50, c.limit_on_p90, c.readings
FROM orders o
JOIN newest n ON o.plant = n.plant AND o.month = n.month
JOIN conveyors c ON c.plant = o.plant AND c.month = o.month AND c.conveyor = o.conveyor
WHERE o.order_by < o.as_of + INTERVAL '3' MONTH
ORDER BY o.order_by, o.plant, o.conveyor;

-- Which conveyors may touch steel before their next outage, beyond what their plant accepts? Panels that nobody has seen are counted
-- in; of what was seen alone stands beside, and how much was seen.
SELECT o.plant, o.conveyor, o.outage, o.outage_from, o.steel_by_outage, o.steel_by_outage_seen, o.accepted_steel,
       o.limit_by_outage, o.limit_on_p10, o.limit_on_p90, o.panels_seen, o.panels, o.readings
FROM outages o
JOIN newest n ON o.plant = n.plant AND o.month = n.month
JOIN (SELECT plant, month, conveyor, min(outage_from) AS next_from FROM outages GROUP BY plant, month, conveyor) f
  ON f.plant = o.plant AND f.month = o.month AND f.conveyor = o.conveyor AND f.next_from = o.outage_from
WHERE o.steel_by_outage > o.accepted_steel
ORDER BY o.steel_by_outage DESC, o.plant, o.conveyor;

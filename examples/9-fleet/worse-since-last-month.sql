-- Which points got worse since the month before: the middle of the limit's date came nearer by more than two weeks, or the chance
-- of the limit by the same outage rose by five points or more? The same liner in both months; what was read since stands beside.
SELECT now.plant, now.conveyor, now.point,
       was.limit_on_p50 AS was_limit_on, now.limit_on_p10, now.limit_on_p50, now.limit_on_p90,
       now.outage, was.limit_by_outage AS was_limit_by_outage, now.limit_by_outage,
       was.readings AS had_readings, now.readings, now.last_seen_on, now.last_seen
FROM points now
JOIN newest n ON now.plant = n.plant AND now.month = n.month
JOIN before_newest b ON b.plant = now.plant
JOIN points was ON was.plant = b.plant AND was.month = b.month
  AND was.conveyor = now.conveyor AND was.point = now.point
  AND was.fitted_on IS NOT DISTINCT FROM now.fitted_on
WHERE now.limit_on_p50 < was.limit_on_p50 - INTERVAL '14' DAY
   OR (now.outage = was.outage AND now.limit_by_outage >= was.limit_by_outage + 0.05)
ORDER BY now.limit_on_p50, now.plant, now.conveyor, now.point;

-- Which readings of the month before say something else now, or are gone? What was written once should stand.
SELECT was.plant, was.conveyor, was.point, was.date, was.kind AS was_kind, was.thickness_mm AS was_mm, was.colour AS was_colour,
       now.kind, now.thickness_mm, now.colour
FROM readings was
JOIN before_newest b ON was.plant = b.plant AND was.month = b.month
JOIN newest n ON n.plant = was.plant
LEFT JOIN readings now ON now.plant = n.plant AND now.month = n.month
  AND now.conveyor = was.conveyor AND now.point = was.point AND now.date = was.date
WHERE now.kind IS NULL OR now.kind <> was.kind
   OR now.thickness_mm IS DISTINCT FROM was.thickness_mm OR now.colour IS DISTINCT FROM was.colour
ORDER BY was.plant, was.conveyor, was.point, was.date;

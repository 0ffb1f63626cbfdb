## survey.rs

no-chart-of-patches-was-found = No chart of { $count } patches was found in the photo. Lay it flat beside the pieces, whole and in the same light, and take the photo again; or give its corners.
there-are-two-charts-in-the-photo = There are two charts in the photo. Leave one of them out, or give the corners of the one to use.
the-charts-first-and-third-row-run = The chart's first and third row run the other way than in the values used for it, as makers differ. Give the values of this very chart, row by row as its patches lie.
a-chart-lies-in-the-photo-but = A chart lies in the photo, but not with the colours that were expected: { $layout } differ from it. If it is another chart, give its own values; if patches are stained or faded, use a fresh one.
a-chart-can-be-found = A chart can be found in a photo only by many different colours, and this one's are too much alike, or look the same turned round. Give its corners: first patch, end of the first row, last patch, start of the last row.
something-lies-shines-or-throws-a-shadow = Something lies, shines or throws a shadow on the chart at { $layout }; what it hides was left aside. Keep the chart clear for surer colours.
patch-of-row = patch { $number } of row { $row }
and = { $others } and { $last }
a-chart-needs-2-to-20-rows = A chart needs 2 to 20 rows and columns and 12 to 300 patches to correct a photo by; this one's table has another size.
part-of-the-chart-lies-outside = Part of the chart lies outside the photo. Take it again with the whole chart in the picture.
the-charts-corners-have-to-lie = The chart's corners have to lie in the upright photo, which is { $width } x { $height } pixels. Mark them there.
the-four-chart-corners-have-to-go = The four chart corners have to go round from the first patch (brown) to the end of its row (bluish-green), the last patch (black) and the start of the last row (white), and hold at least a few pixels a patch.

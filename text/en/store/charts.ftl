## charts.rs

give-the-chart-a-name-of-1 = Give the chart a name of 1 to { $longest_name } letters by which you know it again, such as big chart 2.
there-is-a-chart-called-already-give = There is a chart called { $name } already. Give this one another name.
chart-rows = chart { $id }, "{ $name }", { $rows } rows of { $columns }, from "{ $file_name }"

## charts.rs

it-gives-no-chart = It gives no chart: { $cause }
file-gives-no-chart = { $file } gives no chart: { $cause }

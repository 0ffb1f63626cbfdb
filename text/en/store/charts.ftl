## charts.rs

give-the-chart-a-name-of-1 = Give the chart a name of 1 to { $longest_name } letters by which you know it again, such as big chart 2.
there-is-a-chart-called-already-give = There is a chart called { $name } already. Give this one another name.

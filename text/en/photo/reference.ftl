## reference.rs

the-charts-table = the chart's table: { $cause }
the-charts-table-tells-of-rows = the chart's table tells of { $rows } rows of { $columns } patches; a chart has from 2 to { $most_across } of each
the-charts-table-gives = the chart's table gives "{ $first }" for { $first_view } and "{ $other }" for { $other_view }; give all patches for one light and observer

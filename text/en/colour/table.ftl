## table/cgats.rs

the-file-has-no-end-data-see = The file has no END_DATA; see that nothing is missing at its end.
the-file-announces-samples-and-holds = The file announces { $expected } samples and holds { $rows }; those it holds were taken.

## table/interpret.rs

the-file-holds-tables-of-colours = The file holds { $others } tables of colours; the one with its columns named on line { $line } was taken.
the-highest-reflectance-is-and-was-taken = The highest reflectance is { $highest }, and was taken as a share of the light; if it is percent, write "# unit percent" above the column names.
values-lay-just-below-zero = { $below_zero } values lay just below zero and were taken as zero.
the-light-or-observer-of-samples = The light or observer of { $silent } samples is not said; what is missing was taken from { $unsaid }.
line-column-column2-is-no-place = line { $column }, column "{ $column2 }": { $value } is no place on a chart; count rows and columns from 1

## table/layout.rs

the-table-says-rows-of-patches = the table says { $rows } rows of { $columns } patches and holds { $count } samples; give each patch one row of the table
the-tables-samples-dont-fill-whole-rows = the table's { $count } samples don't fill whole rows as it says; write "# rows 4 columns 6" with the chart's own numbers
the-table-has-patches-and-their-rows = the table has { $count } patches, and their rows and columns are not said; a chart of 24 goes by 4 rows of 6, for any other write "# rows 5 columns 7" above the column names or add the columns row and column
line-sample-its-row-or-column = line { $line }, sample "{ $name }": its row or column is missing; give every patch both
line-has-the-same-row-and-column = line { $line }: "{ $name }" has the same row and column as "{ $name2 }" on line { $line2 }; each place holds one patch
the-rows-and-columns-leave-places = the rows and columns leave places without a patch; give every place of the chart one row of the table

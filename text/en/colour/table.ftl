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

## table/error.rs

the-table-is-empty-export-it-again = the table is empty; export it again with a row for each sample
this-is-not-a-text-file-export = this is not a text file; export the readings as CSV or as CGATS text
the-table-is-larger-than-mb-split = the table is larger than { $megabytes } MB; split it
the-table-has-more-than-samples-split = the table has more than { $most_samples } samples; split it
no-column-of-the-table-holds = no column of the table holds a colour; name the columns L, a and b, or give each wavelength a column such as 400, 410, ... 700
the-table-names-its-columns-but = the table names its columns but has no samples below line { $line }; export it again
line-names-the-column-twice-leave = line { $line } names the column "{ $column }" twice; leave one of them out
line-column-is-no-number-write = line { $line }, column "{ $column }": "{ $text }" is no number; write it like 41.2
line-column-nothing-stands-there-fill = line { $line }, column "{ $column }": nothing stands there; fill it in or leave out the sample
line-sample-is-no-surface = line { $line }, sample "{ $sample }": L { $lightness }, a { $a }, b { $b } is no surface's colour; L lies between 0 and 100, a and b between -200 and 200
line-sample-cause = line { $line }, sample "{ $sample }": { $cause }
line-the-wavelengths-go-by-nm = line { $line }: the wavelengths go by { $step_nm } nm and then from { $from_nm } to { $to_nm } nm; export them evenly, by 1, 5, 10 or 20 nm
line-the-wavelengths-go-by-nm-export = line { $line }: the wavelengths go by { $step_nm } nm; export them by 20 nm or finer
line-names-no-light-and-observer = line { $line }: "{ $text }" names no light and observer that is known here; use D65/10, D65/2, D50/2, A/10, FL2/10 or FL11/10
line-begin-data-comes-before-any-begin = line { $line }: BEGIN_DATA comes before any BEGIN_DATA_FORMAT with names for the columns; export the file again
line-values-stand-where-columns-are = line { $line }: { $found } values stand where { $expected } columns are named; see that no value is missing
the-file-ends-within-its-data = the file ends within its data: { $found } of { $expected } samples are there; export or copy it again

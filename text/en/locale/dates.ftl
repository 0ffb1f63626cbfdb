## dates.rs

# Months, as short as a day's writing wants them.
jan = Jan
feb = Feb
mar = Mar
apr = Apr
may = May
jun = Jun
jul = Jul
aug = Aug
sep = Sep
oct = Oct
nov = Nov
dec = Dec
day-month-year = day, month, year
month-day-year = month, day, year

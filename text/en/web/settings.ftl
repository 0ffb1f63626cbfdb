## settings/show.html

settings-woadstone = Settings · Woadstone
settings = Settings
where-you-are = Where you are
studio = Studio
how-measures-money-and-days-are-written = How measures, money and days are written on your pages, run sheets and reports.
kept = Kept.
every-page-is-written-so = Every page is written so from now on.
as-it-is-now = As it is now:
currency = Currency
its-code-of-three-letters = Its code of three letters, from the list or typed; empty: sums stay plain numbers. Sums that name a currency keep it, and none is converted.
keep-the-settings = Keep the settings
a-report-keeps-its-settings = A report keeps the settings it was made with. Earlier settings stay in the
journal = journal

## pages/settings/show.rs

price-per = { $price } per { $amount }
measures = Measures
these-come-first = These come first, and a bare number of degrees is taken on their scale. You can type any unit at any time. Boards, tags and files of data stay metric.
metric = Metric
us-customary = US customary
where-the-currency-stands = Where the currency stands
behind-the-sum = Behind the sum
before-the-sum = Before the sum
days = Days
with-the-months-name = With the month’s name nobody can take the day for the month; that is kind to people who read your reports elsewhere.
year-month-day = Year, month, day
day-month-year-with-dots = Day, month, year with dots
day-month-year = Day, month, year
month-day-year = Month, day, year
day-then-the-months-name = Day, then the month’s name
the-months-name-then-the-day = The month’s name, then the day
times-of-day = Times of day
hours-24 = 24 hours
hours-12 = 12 hours

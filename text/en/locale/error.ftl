## error.rs

is-no-currencys-code-give-its-three = "{ $typed }" is no currency's code. Give its three letters, such as EUR or USD, or leave it empty for plain numbers.
there-is-no-currency-in-todays-list = There is no currency { $code } in today's list of codes. Take one from the list, or leave it empty for plain numbers.
sums-in-have-decimals-woadstone-counts = Sums in { $code } have { $decimals } decimals; Woadstone counts in hundredths, with two. Leave the currency empty and sums stay plain numbers of two decimals.
is-a-code-that-nobody-pays = { $code } is a code that nobody pays with. Take a currency from the list.
this-is-none-of-the-choices-pick = This is none of the choices. Pick one of those that are listed.

//! Prices of a recipe: their currencies, their sum, and what is said of those that don't go together.

#![allow(clippy::unwrap_used, reason = "functions that only tests call")]

use dyeing::{Money, Plan, Recipe};

fn priced(currency: &str, first: &str, second: &str) -> String {
    format!(
        "name = \"t\"\nclass = \"direct\"\nfibre = \"cotton\"\ncurrency = \"{currency}\"\n\
         goods = {{ weight = \"250 g\" }}\nwater = {{ liquor_ratio = \"20:1\" }}\n\
         dye = [{{ name = \"a\", amount = \"1 % owf\", price = \"{first}\" }}, \
         {{ name = \"b\", amount = \"1 % owf\", price = \"{second}\" }}]\n"
    )
}

#[test]
fn all_prices_of_a_recipe_are_in_one_currency() {
    for (currency, first, second, found) in [
        ("", "8 per 100 g", "4 per 100 g", ""),
        ("EUR", "8 per 100 g", "4 € per 100 g", "EUR"),
        ("", "8 € per 100 g", "EUR 4 per 100 g", "EUR"),
        ("CAD", "$8 per 100 g", "4 CAD per 100 g", "CAD"),
        ("shells", "8 per 100 g", "4 per 100 g", "shells"),
        ("€", "8 per 100 g", "EUR 4 per 100 g", "€"),
        ("£", "£8 per 100 g", "4 per 100 g", "£"),
        ("£", "£8 per 100 g", "GBP 4 per 100 g", "£"),
        ("£", "EGP 8 per 100 g", "4 per 100 g", "£"),
        ("$", "8 USD per 100 g", "$4 per 100 g", "$"),
        ("$", "US$ 8 per 100 g", "4 per 100 g", "$"),
        ("kr.", "8 kr per 100 g", "4 kr. per 100 g", "kr."),
    ] {
        let recipe = Recipe::read(&priced(currency, first, second)).unwrap();
        let cost = Plan::of(&recipe).unwrap().cost;
        assert_eq!(cost.currency, found, "{currency} {first} {second}");
        // 2.5 g of 100 g at 8 and at 4.
        assert_eq!(cost.total, Money::from_cents(20 + 10));
    }
    for (currency, first, second, parts) in [
        (
            "EUR",
            "8 per 100 g",
            "USD 4 per 100 g",
            [
                "dye \"b\", price",
                "in USD and the recipe's prices are in EUR",
            ],
        ),
        (
            "",
            "8 € per 100 g",
            "USD 4 per 100 g",
            [
                "dye \"b\", price",
                "in USD and the recipe's prices are in EUR",
            ],
        ),
        (
            "",
            "8 per 100 g",
            "EUR 4 per 100 g",
            ["dye \"a\", price", "names no currency"],
        ),
        (
            "£",
            "GBP 8 per 100 g",
            "EGP 4 per 100 g",
            [
                "dye \"b\", price",
                "in EGP and the recipe's prices are in GBP",
            ],
        ),
        (
            "£",
            "£8 per 100 g",
            "USD 4 per 100 g",
            [
                "dye \"b\", price",
                "in USD and the recipe's prices are in £",
            ],
        ),
        (
            "£",
            "£8 per 100 g",
            "$4 per 100 g",
            ["dye \"b\", price", "as in USD or CAD"],
        ),
        (
            "shells",
            "8 per 100 g",
            "EUR 4 per 100 g",
            ["dye \"b\", price", "prices are in shells"],
        ),
        (
            "",
            "$8 per 100 g",
            "$4 per 100 g",
            ["dye \"a\", price", "share the sign $"],
        ),
        (
            "EUR",
            "8 JPY per 100 g",
            "4 per 100 g",
            ["dye \"a\", price", "0 decimals"],
        ),
    ] {
        let fault = Recipe::read(&priced(currency, first, second)).unwrap_err();
        let told = fault.to_string();
        for part in parts {
            assert!(told.contains(part), "{currency} {first} {second}: {told}");
        }
    }
}

//! What a material and its lots are.

use dyeing::stock::{self, Stock};

/// What a material is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MaterialKind {
    /// A dye.
    Dye,
    /// Salt, soda, acid, mordant, after-treatment, soap.
    Auxiliary,
    /// Loose fibre.
    Fibre,
    /// Yarn.
    Yarn,
    /// Garments and cloth.
    Garment,
}

/// A material to be put on the shelf.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NewMaterial {
    /// What it is.
    pub kind: MaterialKind,
    /// Its name, as recipes call it.
    pub name: String,
    /// What else is to be known of it.
    pub notes: String,
}

/// A lot to be put on the shelf.
#[derive(Debug, Clone, PartialEq)]
pub struct NewLot {
    /// The day it came, as YYYY-MM-DD.
    pub received_on: String,
    /// How much came.
    pub amount: Stock,
    /// Its price as written, such as `9.50 per 100 g`; empty where it isn't known.
    pub price: String,
    /// What the price is in, by its code; empty: in the bench's currency, if it has one.
    pub currency: String,
    /// From whom, in words.
    pub supplier: String,
    /// What else is to be known of it.
    pub notes: String,
}

/// A material with its lots.
#[derive(Debug, Clone, PartialEq)]
pub struct Material {
    /// Its number on the bench.
    pub id: i64,
    /// What it is.
    pub kind: MaterialKind,
    /// Its name, as recipes call it.
    pub name: String,
    /// What else is to be known of it.
    pub notes: String,
    /// Its lots, as they came.
    pub lots: Vec<Lot>,
}

/// A lot on the shelf.
#[derive(Debug, Clone, PartialEq)]
pub struct Lot {
    /// Its number on the bench.
    pub id: i64,
    /// How it came.
    pub came: NewLot,
    /// What is left; 0 when it is said to be used up, below 0 when more was taken than came.
    pub left: Stock,
    /// Whether it is said to be used up.
    pub is_used_up: bool,
    /// What was taken, also what was taken back, in the order in which it was noted.
    pub taken: Vec<Taken>,
}

/// Something that was taken from a lot.
#[derive(Debug, Clone, PartialEq)]
pub struct Taken {
    /// Its number on the bench.
    pub id: i64,
    /// How much; none: all that was left.
    pub amount: Option<Stock>,
    /// The run that took it: number and title.
    pub run: Option<(i64, String)>,
    /// Why, in words.
    pub words: String,
    /// When it was noted, RFC 3339.
    pub made_at: String,
    /// Whether it was taken back.
    pub is_taken_back: bool,
}

impl MaterialKind {
    /// Every kind, in the order in which they are shown.
    pub const ALL: [Self; 5] = [
        Self::Dye,
        Self::Auxiliary,
        Self::Fibre,
        Self::Yarn,
        Self::Garment,
    ];

    /// Its short name, as it is kept.
    pub const fn key(self) -> &'static str {
        match self {
            Self::Dye => "dye",
            Self::Auxiliary => "auxiliary",
            Self::Fibre => "fibre",
            Self::Yarn => "yarn",
            Self::Garment => "garment",
        }
    }

    /// The kind of that short name.
    pub fn of_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.key() == key)
    }
}

impl NewLot {
    /// Its price with the currency, as the locale has it: `9.50 EUR per 100 g`.
    pub fn price_shown(&self) -> String {
        stock::price_with_currency(&self.price, &self.currency)
    }
}

impl Material {
    /// What is left of it in all lots, by unit.
    pub fn left(&self) -> Vec<Stock> {
        let mut sums: Vec<Stock> = Vec::new();
        for lot in &self.lots {
            match sums.iter_mut().find(|sum| sum.unit == lot.left.unit) {
                Some(sum) => sum.amount += lot.left.amount,
                None => sums.push(lot.left),
            }
        }
        sums
    }
}

//! The random order: which piece goes where, in what turn, and under which blind code.

use super::{Kind, Plan, PlannedPiece, Sharing};
use inference::chance::Chance;
use photo::board::Code;
use serde::Serialize;
use std::collections::{BTreeMap, BTreeSet};

/// Windows of the larger board.
const WINDOWS: usize = 12;
/// Windows of the smaller board.
const FEW_WINDOWS: usize = 6;

/// A plan's pieces and loads in random order, as it follows from the plan's seed.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Order {
    /// Where it started from.
    pub seed: u32,
    /// The pieces: take undyed pieces from the pile in any order and label them in
    /// this one.
    pub pieces: Vec<Allotted>,
    /// For each step the turn in which its loads are run.
    pub loads: Vec<Turns>,
    /// The boards for photos: how many windows each has.
    pub boards: Vec<usize>,
}

/// A piece with all that chance gave it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Allotted {
    /// The piece.
    #[serde(flatten)]
    pub piece: PlannedPiece,
    /// The name of its arm.
    pub arm_name: String,
    /// The code under which it is judged by eye, which tells nothing of its arm.
    pub blind: Code,
    /// Its loads, days and places, by column.
    pub shares: Vec<(Kind, String)>,
    /// The board on which it lies for photos, from 1.
    pub board: usize,
    /// Its window there, from 1.
    pub window: usize,
}

/// The turn of a step's loads.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Turns {
    /// The step.
    pub kind: Kind,
    /// Its loads, first to last.
    pub loads: Vec<String>,
}

impl Plan {
    /// Draws the random order from the plan's seed: the same seed, the same order.
    ///
    /// Each arm's pieces are shuffled over its loads, so that each load gets as many
    /// as planned; pieces are shuffled over the windows of as many boards as needed,
    /// with pieces of every arm on each; loads of a step are run in random turn,
    /// except where a vessel gives their order.
    pub fn order(&self) -> Order {
        let mut chance = Chance::new(u64::from(self.seed));
        let sharing = Sharing::of(self);
        let dealt = shuffled_within_arms(&sharing, &mut chance);
        let blind = blind_codes(sharing.pieces.len(), &mut chance);
        let (places, boards) = windows(&sharing, &mut chance);
        let mut pieces: Vec<Allotted> = sharing
            .pieces
            .iter()
            .enumerate()
            .map(|(i, piece)| Allotted {
                piece: piece.clone(),
                arm_name: self.arms[piece.arm].name.clone(),
                blind: blind[i],
                shares: sharing
                    .columns
                    .iter()
                    .filter_map(|column| {
                        // Each column by a deal of its own, so that no two go together.
                        let from = dealt[&column.kind][i];
                        Some((column.kind, column.name_of(from)?.to_owned()))
                    })
                    .collect(),
                board: places[i].0,
                window: places[i].1,
            })
            .collect();
        chance.shuffle(&mut pieces);
        Order {
            seed: self.seed,
            loads: self.turns(&sharing, &mut chance),
            pieces,
            boards,
        }
    }

    fn turns(&self, sharing: &Sharing, chance: &mut Chance) -> Vec<Turns> {
        let steps = sharing
            .columns
            .iter()
            .filter(|column| matches!(column.kind, Kind::Load(..)) && column.names.len() > 1);
        steps
            .map(|column| {
                let mut loads = column.names.clone();
                chance.shuffle(&mut loads);
                for vessel in &self.vessels {
                    in_given_order(&mut loads, &vessel.order);
                }
                Turns {
                    kind: column.kind,
                    loads,
                }
            })
            .collect()
    }
}

/// Puts those loads that a vessel names into its order, at the places they have.
fn in_given_order(loads: &mut [String], order: &[String]) {
    let places: Vec<usize> = (0..loads.len())
        .filter(|i| order.contains(&loads[*i]))
        .collect();
    let mut named: Vec<String> = places.iter().map(|i| loads[*i].clone()).collect();
    named.sort_by_key(|load| order.iter().position(|other| other == load));
    for (place, load) in places.into_iter().zip(named) {
        loads[place] = load;
    }
}

/// For each column a permutation of the pieces that keeps arm and role.
///
/// Loads that arms have to themselves go together from step to step: the pieces of
/// one pot stay together in the wash. Crossed, they would tie all pieces of an arm
/// into one lot, and nothing would show how much lots differ.
fn shuffled_within_arms(sharing: &Sharing, chance: &mut Chance) -> BTreeMap<Kind, Vec<usize>> {
    let together = shuffled(sharing, chance);
    sharing
        .columns
        .iter()
        .map(|column| {
            let from = if column.of_one_arm_each(sharing) {
                together.clone()
            } else {
                shuffled(sharing, chance)
            };
            (column.kind, from)
        })
        .collect()
}

fn shuffled(sharing: &Sharing, chance: &mut Chance) -> Vec<usize> {
    let mut from: Vec<usize> = (0..sharing.pieces.len()).collect();
    let mut start = 0;
    let groups = sharing
        .pieces
        .chunk_by(|a, b| (a.arm, a.role) == (b.arm, b.role));
    for group in groups {
        chance.shuffle(&mut from[start..start + group.len()]);
        start += group.len();
    }
    from
}

/// Codes of which none tells its piece's arm, all different.
fn blind_codes(count: usize, chance: &mut Chance) -> Vec<Code> {
    let mut codes = BTreeSet::new();
    let mut drawn = Vec::with_capacity(count);
    while drawn.len() < count {
        let code = Code::from_number(chance.below(Code::COUNT as usize) as u32);
        if codes.insert(code) {
            drawn.push(code);
        }
    }
    drawn
}

/// Board and window of each piece, both from 1, and the boards' sizes.
fn windows(sharing: &Sharing, chance: &mut Chance) -> (Vec<(usize, usize)>, Vec<usize>) {
    let count = sharing.pieces.len();
    let boards = count.div_ceil(WINDOWS).max(1);
    // Dealt in turn, keepers first, arm by arm: every board gets its share of each.
    let mut turn: Vec<usize> = (0..count).collect();
    turn.sort_by_key(|i| {
        (
            sharing.pieces[*i].role == crate::Role::Test,
            sharing.pieces[*i].arm,
        )
    });
    let mut of_board: Vec<Vec<usize>> = vec![Vec::new(); boards];
    for (place, piece) in turn.into_iter().enumerate() {
        of_board[place % boards].push(piece);
    }
    let mut places = vec![(0, 0); count];
    let mut sizes = Vec::with_capacity(boards);
    for (board, pieces) in of_board.iter().enumerate() {
        let size = if pieces.len() <= FEW_WINDOWS {
            FEW_WINDOWS
        } else {
            WINDOWS
        };
        let mut free: Vec<usize> = (1..=size).collect();
        chance.shuffle(&mut free);
        for (piece, window) in pieces.iter().zip(free) {
            places[*piece] = (board + 1, window);
        }
        sizes.push(size);
    }
    (places, sizes)
}

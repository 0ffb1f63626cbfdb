//! What a blind session shows: pairs of cloths that are known by codes alone.

use crate::text;
use crate::{
    PieceId, Reading, Role, Trial, TrialError,
    side_by_side::{self, Sight},
};
use inference::chance::Chance;
use photo::board::Code;
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};

/// Pairs of one session at most: a person can't judge more with a rested eye.
const MOST_PAIRS: usize = 200;

/// How pairs are looked at. Grades of the two are never mixed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Way {
    /// The cloths themselves, fetched by their codes.
    Cloth,
    /// As measured, on a screen: weaker, since screens only approximate.
    Screen,
}

impl Way {
    /// As written in forms and files.
    pub const fn as_str(self) -> &'static str {
        match self {
            Self::Cloth => "cloth",
            Self::Screen => "screen",
        }
    }

    /// What was looked at, in words.
    pub fn in_words(self) -> &'static str {
        match self {
            Self::Cloth => text::eyes::the_cloths_themselves(),
            Self::Screen => text::eyes::measured_colours_on_a_screen(),
        }
    }
}

/// What a cloth of a session is; shown to nobody who judges.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum What {
    /// A piece of the trial.
    Piece(PieceId),
    /// The other half of a keeper that is cut or folded in two.
    OtherHalf(PieceId),
    /// A new piece of the undyed cloth.
    Undyed,
}

/// A cloth with the code by which it is fetched.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Cloth {
    /// What it is.
    pub what: What,
    /// Its code, which tells nothing of its arm.
    pub code: Code,
}

/// What a pair is there for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PairKind {
    /// A test piece against its arm's keeper: change in colour.
    Change,
    /// Two cloths without a difference, to learn what an eye sees where nothing is.
    Catch,
    /// A witness cloth against undyed cloth: staining.
    Staining,
}

/// Two cloths that are judged against each other.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Pair {
    /// What it is there for.
    pub kind: PairKind,
    /// The piece that is graded; of a catch pair the keeper.
    pub piece: PieceId,
    /// The two, the graded one first.
    pub cloths: [Cloth; 2],
    /// Their measured colours, L*, a*, b*, where they are shown on a screen.
    pub labs: Option<[[f64; 3]; 2]>,
}

/// What is asked of a session.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Wish {
    /// After how many rounds.
    pub stage: u32,
    /// How pairs are looked at.
    pub way: Way,
    /// Whether witness cloths are graded for staining too.
    pub staining: bool,
    /// Whether pairs without a difference are mixed in.
    pub catch: bool,
    /// How many pairs each person sees twice.
    pub repeats: usize,
}

/// One blind session: the same pairs for everybody, in an order of each person's own.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Session {
    /// After how many rounds.
    pub stage: u32,
    /// How pairs are looked at.
    pub way: Way,
    /// The pairs.
    pub pairs: Vec<Pair>,
    /// How many pairs each person sees twice.
    pub repeats: usize,
    /// What could not be had, in sentences.
    pub notes: Vec<String>,
}

impl Session {
    /// The session that answers a wish. `known` are codes that pieces carry already;
    /// other cloths get codes drawn from `seed`.
    ///
    /// # Errors
    /// There is no pair to show: no arm has both test pieces and a keeper, or on a
    /// screen nothing was read of them; or there are more than 200.
    pub fn of(
        trial: &Trial,
        readings: &[Reading],
        wish: &Wish,
        known: &BTreeMap<PieceId, Code>,
        seed: u64,
    ) -> Result<Self, TrialError> {
        let mut codes = Codes {
            chance: Chance::new(seed),
            given: BTreeMap::new(),
            taken: known.values().copied().collect(),
            known,
        };
        let mut draft = Draft {
            readings,
            wish,
            pairs: Vec::new(),
            unread: 0,
            notes: Vec::new(),
        };
        let with_role = |role: Role| trial.pieces.iter().filter(move |piece| piece.role == role);
        for arm in &trial.arms {
            let mut keepers = with_role(Role::Keeper).filter(|piece| piece.arm == arm.id);
            let Some(keeper) = keepers.next() else {
                draft
                    .notes
                    .push(text::eyes::has_no_keeper_so_there_is_nothing(&arm.name));
                continue;
            };
            let against = What::Piece(keeper.id);
            for piece in with_role(Role::Test).filter(|piece| piece.arm == arm.id) {
                draft.add(PairKind::Change, piece.id, against, &mut codes);
            }
            if wish.catch {
                let other = keepers.next();
                let other = other.map_or(What::OtherHalf(keeper.id), |piece| What::Piece(piece.id));
                draft.add(PairKind::Catch, keeper.id, other, &mut codes);
            }
        }
        if wish.staining {
            for piece in with_role(Role::Witness) {
                draft.add(PairKind::Staining, piece.id, What::Undyed, &mut codes);
            }
        }
        draft.finish()
    }

    /// Every cloth, each once, in the order of their codes.
    pub fn cloths(&self) -> Vec<Cloth> {
        let all = self.pairs.iter().flat_map(|pair| pair.cloths);
        let by_code: BTreeMap<Code, Cloth> = all.map(|cloth| (cloth.code, cloth)).collect();
        by_code.into_values().collect()
    }
}

/// A session in the making.
struct Draft<'a> {
    readings: &'a [Reading],
    wish: &'a Wish,
    pairs: Vec<Pair>,
    /// Pairs of which nothing was read.
    unread: usize,
    notes: Vec<String>,
}

impl Draft<'_> {
    fn add(&mut self, kind: PairKind, piece: PieceId, against: What, codes: &mut Codes) {
        let labs = match self.wish.way {
            Way::Cloth => None,
            Way::Screen => match self.labs(piece, against) {
                None => {
                    self.unread += 1;
                    return;
                }
                labs => labs,
            },
        };
        self.pairs.push(Pair {
            kind,
            piece,
            cloths: [What::Piece(piece), against].map(|what| codes.of(what)),
            labs,
        });
    }

    /// Colours of a pair as measured; none where one of them was not read.
    fn labs(&self, piece: PieceId, against: What) -> Option<[[f64; 3]; 2]> {
        let at = |piece: PieceId, stage: u32| Sight { stage, piece };
        let stage = self.wish.stage;
        let other = match against {
            What::Piece(other) | What::OtherHalf(other) => at(other, stage),
            What::Undyed => at(piece, 0),
        };
        let labs = side_by_side::labs(self.readings, [at(piece, stage), other])?;
        Some(labs.map(|lab| lab.to_array()))
    }

    fn finish(mut self) -> Result<Session, TrialError> {
        let wrong = |field: &str, message: String| {
            Err(TrialError {
                field: field.into(),
                message,
            })
        };
        if !self.pairs.iter().any(|pair| pair.kind == PairKind::Change) {
            return match self.unread {
                0 => wrong("stage", text::eyes::there_is_no_pair_to_judge().into()),
                _ => wrong("way", text::eyes::nothing_was_read_of_these_pieces().into()),
            };
        }
        if self.pairs.len() > MOST_PAIRS {
            return wrong(
                "stage",
                text::eyes::there_would_be_pairs_more(self.pairs.len(), MOST_PAIRS),
            );
        }
        if self.unread > 0 {
            self.notes.push(match self.unread {
                1 => text::eyes::n_1_pair_was_not_read().to_owned(),
                count => text::eyes::pairs_were_not_read_at_that_stage(count),
            });
        }
        let changes = self.pairs.iter().filter(|p| p.kind == PairKind::Change);
        Ok(Session {
            stage: self.wish.stage,
            way: self.wish.way,
            repeats: self.wish.repeats.min(changes.count()),
            pairs: self.pairs,
            notes: self.notes,
        })
    }
}

/// Codes of cloths, each drawn once.
struct Codes<'a> {
    chance: Chance,
    given: BTreeMap<What, Code>,
    taken: BTreeSet<Code>,
    known: &'a BTreeMap<PieceId, Code>,
}

impl Codes<'_> {
    fn of(&mut self, what: What) -> Cloth {
        let carried = match what {
            What::Piece(piece) => self.known.get(&piece).copied(),
            _ => None,
        };
        let code = carried
            .or_else(|| self.given.get(&what).copied())
            .unwrap_or_else(|| self.draw());
        self.given.insert(what, code);
        Cloth { what, code }
    }

    fn draw(&mut self) -> Code {
        loop {
            let code = Code::from_number(self.chance.below(Code::COUNT as usize) as u32);
            if self.taken.insert(code) {
                return code;
            }
        }
    }
}

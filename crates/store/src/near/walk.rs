//! A walk over the index of colours from a colour outward.
//!
//! SQLite's R-tree finds what lies in a box, but not what lies nearest. Its nodes are rows like
//! others, though: boxes within boxes down to colours. Walked by the least distance that each box
//! allows, they give colours in order, and no box is opened that can hold no nearer one.

use crate::text;
use rusqlite::types::Type;
use rusqlite::{CachedStatement, Connection, Error, OptionalExtension};
use std::cmp::Ordering;
use std::collections::BinaryHeap;
use trial::near::{FURTHEST_DE00, distance_de00, least_de00};

/// The node that all others hang from.
const ROOT: i64 = 1;
/// Bytes before a node's entries: two for the height of the whole, kept in the root, two for their number.
const HEAD: usize = 4;
/// Bytes of an entry: its number, and the lowest and the highest of L*, a*, b* and the view.
const ENTRY: usize = 8 + 8 * 4;

/// So many colours are weighed at most. Where more than that could be the nearest, all at the edge of
/// what is near, some of them may be missed.
const MOST_WEIGHED: usize = 20_000;

/// Readings by their distance from a colour, the nearest first.
pub(super) struct Walk<'a> {
    nodes: CachedStatement<'a>,
    asked: [f64; 3],
    /// The number of the view; none if no reading can have it.
    view: Option<f32>,
    ahead: BinaryHeap<Ahead>,
    /// Colours whose distance was worked out.
    weighed: usize,
}

/// What is to be looked at, no nearer than so much.
struct Ahead {
    de00: f64,
    what: What,
    id: i64,
}

#[derive(Clone, Copy)]
enum What {
    /// A node so many steps above the colours; none: above an unknown number, as the root is.
    Node(Option<u16>),
    /// A colour whose distance is still to be worked out.
    Colour([f64; 3]),
    /// A reading, by its distance.
    Reading,
}

impl<'a> Walk<'a> {
    pub(super) fn from(
        database: &'a Connection,
        asked: [f64; 3],
        view: &str,
    ) -> rusqlite::Result<Self> {
        let view = database
            .prepare_cached("SELECT number FROM view_number WHERE view = ?1")?
            .query_row([view], |row| row.get(0))
            .optional()?;
        Ok(Self {
            nodes: database
                .prepare_cached("SELECT data FROM reading_colour_node WHERE nodeno = ?1")?,
            asked,
            view,
            ahead: BinaryHeap::from([Ahead {
                de00: 0.0,
                what: What::Node(None),
                id: ROOT,
            }]),
            weighed: 0,
        })
    }

    /// Distance, to single precision, and number of the next reading; none where all others lie
    /// further than [`FURTHEST_DE00`].
    pub(super) fn next(&mut self) -> rusqlite::Result<Option<(f64, i64)>> {
        while let Some(Ahead { de00, what, id }) = self.ahead.pop() {
            match what {
                What::Reading => return Ok(Some((de00, id))),
                _ if self.weighed == MOST_WEIGHED => {}
                What::Node(height) => self.open(id, height)?,
                What::Colour(lab) => {
                    self.weighed += 1;
                    self.meet(distance_de00(self.asked, lab), What::Reading, id);
                }
            }
        }
        Ok(None)
    }

    fn meet(&mut self, de00: f64, what: What, id: i64) {
        if de00 <= FURTHEST_DE00 {
            self.ahead.push(Ahead { de00, what, id });
        }
    }

    /// Looks at what a node holds.
    fn open(&mut self, number: i64, height: Option<u16>) -> rusqlite::Result<()> {
        let Some(view) = self.view else {
            return Ok(());
        };
        let data: Vec<u8> = self.nodes.query_row([number], |row| row.get(0))?;
        let whole = |at: usize| Some(u16::from_be_bytes([*data.get(at)?, *data.get(at + 1)?]));
        let (Some(all), Some(count)) = (whole(0), whole(2)) else {
            return Err(broken(number));
        };
        let height = height.unwrap_or(all);
        let entries = data.get(HEAD..HEAD + usize::from(count) * ENTRY);
        for entry in entries.ok_or_else(|| broken(number))?.chunks_exact(ENTRY) {
            let (id, bounds) = entry.split_at(8);
            let id = id.iter().fold(0, |id, byte| id << 8 | i64::from(*byte));
            let bound = |n: usize| {
                let at = 4 * n;
                f32::from_be_bytes([bounds[at], bounds[at + 1], bounds[at + 2], bounds[at + 3]])
            };
            if view < bound(6) || view > bound(7) {
                continue;
            }
            let low = [0, 2, 4].map(|n| f64::from(bound(n)));
            let high = [1, 3, 5].map(|n| f64::from(bound(n)));
            let what = match height.checked_sub(1) {
                Some(below) => What::Node(Some(below)),
                None => What::Colour(low),
            };
            self.meet(least_de00(self.asked, low, high), what, id);
        }
        Ok(())
    }
}

fn broken(node: i64) -> Error {
    let why = text::thing::node_of_the_index_of_colours(node);
    Error::FromSqlConversionFailure(0, Type::Blob, why.into())
}

/// The nearest comes first; of equals the earlier reading.
impl Ord for Ahead {
    fn cmp(&self, other: &Self) -> Ordering {
        let nearer = other.de00.total_cmp(&self.de00);
        nearer.then_with(|| other.id.cmp(&self.id))
    }
}

impl PartialOrd for Ahead {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl PartialEq for Ahead {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}

impl Eq for Ahead {}

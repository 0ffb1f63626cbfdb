//! What reading and surveying ask of the board.

use crate::{
    Flag, FlagCode, Refusal, RefusalCode, Request,
    chart::{self, Found, Layout, Search},
    decode::Upright,
};

use super::{BoardSeen, seen};

/// The board of a photo and the request as it stands with it: its windows become
/// areas where none were given.
///
/// # Errors
/// The photo is to be read by its board alone, and the board can't be used.
pub(crate) fn asked(
    photo: &Upright,
    request: &Request,
) -> Result<(Option<BoardSeen>, Request), Refusal> {
    let mut request = request.clone();
    let board = match seen::find(photo) {
        Ok(board) => board,
        // Whoever says where the pieces lie has no need of the board.
        Err(_) if !request.areas.is_empty() => None,
        Err(refusal) => return Err(refusal),
    };
    if request.areas.is_empty() {
        request.areas = board.as_ref().map(BoardSeen::areas).unwrap_or_default();
    }
    Ok((board, request))
}

/// The board for a first look at a photo: a board that can't be used is a remark,
/// for the pieces may still be marked by hand. A mirrored photo stays refused.
pub(crate) fn noticed(photo: &Upright) -> Result<(Option<BoardSeen>, Option<Flag>), Refusal> {
    match seen::find(photo) {
        Ok(board) => Ok((board, None)),
        Err(refusal) if refusal.code == RefusalCode::Mirrored => Err(refusal),
        Err(refusal) => {
            let flag = Flag::new(FlagCode::BoardUnread, refusal.message);
            Ok((None, Some(flag)))
        }
    }
}

/// The chart in the board's dock; none where there is no board, or no chart in its
/// dock: then it may lie elsewhere in the photo.
pub(crate) fn chart_in_dock(
    photo: &Upright,
    board: Option<&BoardSeen>,
    layout: &Layout,
) -> Option<Found> {
    let around = board?.dock(8.0)?;
    let bound = |k: usize, size: usize| {
        let low = around.iter().map(|p| p[k]).fold(f64::INFINITY, f64::min);
        let high = around.iter().map(|p| p[k]).fold(0.0, f64::max);
        let low = low.clamp(0.0, size as f64) as usize;
        let high = high.clamp(0.0, size as f64) as usize;
        (low, high.saturating_sub(low))
    };
    let ((left, width), (top, height)) = (bound(0, photo.width), bound(1, photo.height));
    if width < 64 || height < 64 {
        return None;
    }
    let linear = photo.linear();
    let search = Search::new(width, height, |x, y| linear(photo.at(left + x, top + y)))
        .by_columns(photo.is_sideways());
    let mut found = chart::find(&search, layout).ok()?;
    for [x, y] in &mut found.corners {
        *x += left as f64;
        *y += top as f64;
    }
    Some(found)
}

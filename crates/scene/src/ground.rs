//! What lies at each point of the table, in the camera's channels.

use crate::{
    Background, Chart, Glare, Piece, Scene, Texture, Wet,
    camera::{Seen, Sensor},
    chart_spectra,
    hash::smooth,
    resist::{self, Laid},
    sheet::Print,
};

/// How far a shadow reaches beyond the edge of what casts it, mm.
const SHADOW_MM: f64 = 2.2;

/// The table with every surface already seen by the sensor.
pub(crate) struct Ground<'a> {
    seed: u64,
    background: &'a Background,
    underlay: [Seen; 2],
    patches: [Seen; 24],
    things: Vec<Thing<'a>>,
    glare: Option<Glare>,
}

/// Something flat with an outline.
struct Thing<'a> {
    outline: Vec<[f64; 2]>,
    /// Left, top, right and bottom, mm.
    bounds: [f64; 4],
    face: Seen,
    kind: Kind<'a>,
}

enum Kind<'a> {
    Cloth(Box<Surface<'a>>),
    Board(&'a Chart),
    Sheet { print: Print<'a>, ink: Seen },
}

/// The face of a cloth.
struct Surface<'a> {
    texture: Texture,
    seed: u64,
    wet: Option<Wet>,
    /// The pattern, and its shades from pale to deep.
    pattern: Option<(Laid<'a>, Vec<Seen>)>,
}

impl<'a> Surface<'a> {
    fn new(piece: &'a Piece, sensor: &Sensor, seed: u64) -> Self {
        let shades = |dyed| {
            let shades = resist::shades(dyed).into_iter();
            shades
                .map(|shade| sensor.see(&piece.body(&shade)))
                .collect()
        };
        let pattern = Laid::new(piece).zip(piece.resist.as_deref().map(shades));
        Self {
            texture: piece.texture,
            seed,
            wet: piece.wet,
            pattern,
        }
    }

    /// The channel values at a point (mm) of a cloth that is even but for this.
    fn at(&self, even: Seen, point: [f64; 2], share: f64) -> [f64; 3] {
        let relief = self.texture.at(self.seed, point);
        let dyed = match &self.pattern {
            None => even.under(share),
            Some((laid, shades)) => {
                let (step, part) = resist::step(laid.depth(point));
                let [pale, deep] = [step, step + 1].map(|i| shades[i].under(share));
                [0, 1, 2].map(|k| pale[k] + part * (deep[k] - pale[k]))
            }
        };
        let sparkle = self.wet.map_or(0.0, |wet| wet.sparkle(self.seed, point));
        dyed.map(|value| value * relief + sparkle)
    }
}

impl<'a> Ground<'a> {
    pub(crate) fn new(scene: &'a Scene, sensor: &Sensor) -> Self {
        let sheets = scene.sheet.iter().map(|sheet| {
            let face = sensor.see(&sheet.paper);
            let (print, ink) = (Print::of(sheet), sensor.see(&sheet.ink));
            let kind = Kind::Sheet { print, ink };
            Thing::new(sheet.corners_mm().to_vec(), face, kind)
        });
        let boards = scene.chart.iter().chain(&scene.flaws.second_chart);
        let boards = boards.map(|chart| {
            let outline = chart.corners_mm(chart.margin_mm).to_vec();
            let face = sensor.see(&chart.frame.reflectance());
            Thing::new(outline, face, Kind::Board(chart))
        });
        let cloths = scene.pieces.iter().enumerate().map(|(i, piece)| {
            let face = sensor.see(&piece.body(&piece.reflectance));
            let seed = crate::hash::mix(scene.seed, i as u64 + 1);
            let surface = Surface::new(piece, sensor, seed);
            Thing::new(
                piece.outline_mm.clone(),
                face,
                Kind::Cloth(Box::new(surface)),
            )
        });
        Self {
            seed: scene.seed,
            background: &scene.background,
            underlay: scene.background.surfaces().map(|s| sensor.see(&s)),
            patches: chart_spectra().map(|s| sensor.see(&s)),
            things: sheets.chain(boards).chain(cloths).collect(),
            glare: scene.flaws.glare,
        }
    }

    /// The topmost thing that may show within a pixel around `point` (mm), for
    /// [`Self::at`]; None spares it the search.
    pub(crate) fn near(&self, point: [f64; 2]) -> Option<usize> {
        const PIXEL_MM: f64 = 1.0;
        // The last laid lies on top.
        self.things
            .iter()
            .rposition(|thing| thing.may_reach(point, SHADOW_MM + PIXEL_MM))
    }

    /// The channel values at a point (mm), given what is near and which share of
    /// the light comes from the second.
    pub(crate) fn at(&self, near: Option<usize>, point: [f64; 2], lit: f64) -> [f64; 3] {
        let mut shade: f64 = 1.0;
        let mut seen = None;
        for thing in near
            .iter()
            .flat_map(|top| self.things[..=*top].iter().rev())
        {
            if !thing.may_reach(point, SHADOW_MM) {
                continue;
            }
            let beyond = thing.beyond(point);
            if beyond <= 0.0 {
                let face = face(thing, &self.patches, point, lit);
                // A sheet lies beneath the rest, which throws its shadow on it.
                let on_sheet = matches!(thing.kind, Kind::Sheet { .. });
                seen = Some(if on_sheet {
                    face.map(|v| v * shade)
                } else {
                    face
                });
                break;
            } else if beyond < SHADOW_MM {
                shade = shade.min(1.0 - 0.42 * (1.0 - beyond / SHADOW_MM).powi(2));
            }
        }
        let mut seen = seen.unwrap_or_else(|| {
            let (share, relief) = self.background.at(self.seed, point);
            let [first, second] = self.underlay.map(|seen| seen.under(lit));
            [0, 1, 2].map(|k| shade * relief * (first[k] + share * (second[k] - first[k])))
        });
        if let Some(glare) = self.glare {
            let [dx, dy] = [0, 1].map(|k| (point[k] - glare.at_mm[k]) / glare.radius_mm);
            let added = glare.strength * (-0.5 * (dx * dx + dy * dy)).exp();
            seen = seen.map(|value| value + added);
        }
        seen
    }
}

/// The channel values at a point (mm) of a thing.
fn face(thing: &Thing, patches: &[Seen; 24], point: [f64; 2], lit: f64) -> [f64; 3] {
    match &thing.kind {
        Kind::Board(chart) => {
            let patch = chart.patch_at(point).map(|patch| patches[patch]);
            patch.unwrap_or(thing.face).under(lit)
        }
        Kind::Cloth(surface) => surface.at(thing.face, point, lit),
        Kind::Sheet { print, ink } => {
            let surface = if print.is_dark(point) {
                *ink
            } else {
                thing.face
            };
            surface.under(lit)
        }
    }
}

impl<'a> Thing<'a> {
    fn new(outline: Vec<[f64; 2]>, face: Seen, kind: Kind<'a>) -> Self {
        let side = |k: usize, pick: fn(f64, f64) -> f64, start: f64| {
            outline.iter().map(|p| p[k]).fold(start, pick)
        };
        let bounds = [
            side(0, f64::min, f64::INFINITY),
            side(1, f64::min, f64::INFINITY),
            side(0, f64::max, f64::NEG_INFINITY),
            side(1, f64::max, f64::NEG_INFINITY),
        ];
        Self {
            outline,
            bounds,
            face,
            kind,
        }
    }

    /// Whether a point (mm) lies less than `reach` mm beyond its bounds.
    fn may_reach(&self, [x, y]: [f64; 2], reach: f64) -> bool {
        let [left, top, right, bottom] = self.bounds;
        (left - reach..right + reach).contains(&x) && (top - reach..bottom + reach).contains(&y)
    }

    /// Distance beyond the edge (mm); 0 or less inside. Cut cloth has a slightly
    /// uneven edge.
    fn beyond(&self, [x, y]: [f64; 2]) -> f64 {
        let mut inside = false;
        let mut nearest = f64::INFINITY;
        let n = self.outline.len();
        for i in 0..n {
            let ([ax, ay], [bx, by]) = (self.outline[i], self.outline[(i + 1) % n]);
            if (ay > y) != (by > y) && x < ax + (y - ay) / (by - ay) * (bx - ax) {
                inside = !inside;
            }
            let (ex, ey) = (bx - ax, by - ay);
            let along = (((x - ax) * ex + (y - ay) * ey) / (ex * ex + ey * ey)).clamp(0.0, 1.0);
            let (dx, dy) = (x - ax - along * ex, y - ay - along * ey);
            nearest = nearest.min(dx * dx + dy * dy);
        }
        let edge = nearest.sqrt();
        let beyond = if inside { -edge } else { edge };
        match &self.kind {
            Kind::Cloth(surface) if edge < 1.0 => {
                let seed = surface.seed;
                beyond
                    + 0.22 * smooth(seed ^ 0xED, x * 1.4, y * 1.4)
                    + 0.3 * smooth(seed, x / 9.0, y / 9.0)
            }
            _ => beyond,
        }
    }
}

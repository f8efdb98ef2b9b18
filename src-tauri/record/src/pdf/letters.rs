//! Words into lines of glyphs. The faces are compiled in; no font of the system is looked at.

use std::collections::BTreeSet;
use std::ops::Range;
use std::rc::Rc;
use std::sync::Arc;

use krilla::text::{Font, GlyphId, KrillaGlyph};
use parley::fontique::{Blob, Charmap, Collection, CollectionOptions, FontInfoOverride, SourceCache};
use parley::{
    FontContext, FontFamily, FontFamilyName, FontWeight, Layout, LayoutContext, LineHeight, OverflowWrap,
    Run as ShapedRun, StyleProperty,
};

use super::ink::{Ink, Look};
use super::printable::{UNSHOWN, printable};

/// Line height by type size.
const LEADING: f32 = 1.36;
/// Rounds of putting [`UNSHOWN`] in for what cannot be shown together, such as a letter of one face with an accent of
/// another; more than one where that made new clusters.
const ROUNDS: usize = 4;

/// Every face with the family it is asked for by, in the order in which they are asked.
const FACES: &[(&str, &[u8])] = &[
    ("text", include_bytes!("../../fonts/AtkinsonHyperlegible-Regular-latin.ttf")),
    ("text", include_bytes!("../../fonts/AtkinsonHyperlegible-Bold-latin.ttf")),
    ("text more", include_bytes!("../../fonts/AtkinsonHyperlegible-Regular-latin-ext.ttf")),
    ("text more", include_bytes!("../../fonts/AtkinsonHyperlegible-Bold-latin-ext.ttf")),
    ("other letters", include_bytes!("../../fonts/NotoSans-Regular.ttf")),
    ("arrows", include_bytes!("../../fonts/NotoSansMath-Regular.ttf")),
    ("signs", include_bytes!("../../fonts/NotoSansSymbols-Regular.ttf")),
];
const FAMILIES: &[&str] = &["text", "text more", "other letters", "arrows", "signs"];

/// A line of words, set.
#[derive(Clone, Default)]
pub(super) struct Line {
    /// From the first to the last glyph, without blanks at the end.
    pub width: f32,
    pub height: f32,
    /// From the top of the line to its baseline.
    pub ascent: f32,
    pub runs: Vec<Run>,
}

/// Glyphs of one face and look.
#[derive(Clone)]
pub(super) struct Run {
    pub font: Font,
    pub size: f32,
    pub ink: Ink,
    /// Where it begins in the line.
    pub x: f32,
    pub glyphs: Vec<KrillaGlyph>,
    /// The text that the glyphs point into.
    pub text: Rc<str>,
}

/// Sets words.
pub(super) struct Letters {
    fonts: FontContext,
    layouts: LayoutContext<Ink>,
    faces: Vec<(u64, Font)>,
    /// Which characters each face has.
    charmaps: Vec<Charmap<'static>>,
    /// Characters that could not be shown so far.
    pub unshown: BTreeSet<char>,
}

impl Letters {
    /// Nothing when a face that is compiled in is no font, which a test rules out.
    pub fn new() -> Option<Letters> {
        let mut collection = Collection::new(CollectionOptions { shared: false, system_fonts: false });
        let (mut faces, mut charmaps) = (Vec::new(), Vec::new());
        for (family, bytes) in FACES {
            let blob = Blob::new(Arc::new(*bytes));
            faces.push((blob.id(), Font::new((*bytes).into(), 0)?));
            let named = FontInfoOverride { family_name: Some(family), ..FontInfoOverride::default() };
            let registered = collection.register_fonts(blob, Some(named));
            let infos = registered.iter().flat_map(|(_, infos)| infos);
            charmaps.extend(infos.filter_map(|info| info.charmap_index().charmap(bytes)));
        }
        let fonts = FontContext { collection, source_cache: SourceCache::default() };
        let layouts = LayoutContext::new();
        (charmaps.len() == FACES.len()).then_some(Letters {
            fonts,
            layouts,
            faces,
            charmaps,
            unshown: BTreeSet::new(),
        })
    }

    /// Sets a text in one look in lines of at most this width.
    pub fn set(&mut self, text: &str, look: Look, width: f32) -> Vec<Line> {
        self.set_parts(&[(text, look)], width)
    }

    /// Sets a text in one line, however long.
    pub fn one(&mut self, text: &str, look: Look) -> Line {
        self.set(text, look, f32::INFINITY).into_iter().next().unwrap_or_default()
    }

    /// Sets parts of a paragraph, each in its look.
    pub fn set_parts(&mut self, parts: &[(&str, Look)], width: f32) -> Vec<Line> {
        let charmaps = &self.charmaps;
        let is_in_a_face = |c: char| charmaps.iter().any(|map| map.map(c).is_some_and(|glyph| glyph != 0));
        let unshown = &mut self.unshown;
        let of = |(text, look): &(&str, Look)| (printable(text, is_in_a_face, unshown), *look);
        let mut parts: Vec<(String, Look)> = parts.iter().map(of).collect();
        for _ in 0..ROUNDS {
            let (text, layout) = self.lay_out(&parts, width);
            let lacking = lacking(&layout);
            if lacking.is_empty() {
                return self.lines(&text, &layout);
            }
            self.unshown
                .extend(lacking.iter().filter_map(|range| text.get(range.clone())).flat_map(str::chars));
            replace(&mut parts, &lacking);
        }
        let (text, layout) = self.lay_out(&parts, width);
        self.lines(&text, &layout)
    }

    fn lay_out(&mut self, parts: &[(String, Look)], width: f32) -> (Rc<str>, Layout<Ink>) {
        let text: String = parts.iter().map(|(text, _)| text.as_str()).collect();
        let mut builder = self.layouts.ranged_builder(&mut self.fonts, &text, 1.0, false);
        let families: Vec<_> = FAMILIES.iter().map(|name| FontFamilyName::Named((*name).into())).collect();
        builder.push_default(StyleProperty::FontFamily(FontFamily::List(families.into())));
        builder.push_default(StyleProperty::LineHeight(LineHeight::FontSizeRelative(LEADING)));
        builder.push_default(StyleProperty::OverflowWrap(OverflowWrap::Anywhere));
        if let Some((_, look)) = parts.first() {
            builder.push_default(StyleProperty::FontSize(look.size));
        }
        let mut at = 0;
        for (part, look) in parts {
            let range = at..at + part.len();
            at = range.end;
            let weight = if look.bold { FontWeight::BOLD } else { FontWeight::NORMAL };
            builder.push(StyleProperty::FontSize(look.size), range.clone());
            builder.push(StyleProperty::FontWeight(weight), range.clone());
            builder.push(StyleProperty::Brush(look.ink), range);
        }
        let mut layout = builder.build(&text);
        layout.break_all_lines(width.is_finite().then_some(width));
        (text.into(), layout)
    }

    fn lines(&self, text: &Rc<str>, layout: &Layout<Ink>) -> Vec<Line> {
        let lines = layout.lines().map(|line| {
            let (metrics, mut x) = (line.metrics(), 0.0);
            let mut runs = Vec::new();
            for shaped in line.runs() {
                self.add_runs(&shaped, text, &mut x, &mut runs);
            }
            Line {
                width: metrics.advance - metrics.hanging_advance,
                height: metrics.line_height,
                ascent: metrics.baseline - metrics.block_min_coord,
                runs,
            }
        });
        lines.collect()
    }

    /// Adds the glyphs of a shaped run, one run for each look in it.
    fn add_runs(&self, shaped: &ShapedRun<'_, Ink>, text: &Rc<str>, x: &mut f32, runs: &mut Vec<Run>) {
        let Some((_, font)) = self.faces.iter().find(|(id, _)| *id == shaped.font().data.id()) else {
            return;
        };
        let size = shaped.font_size();
        let (first, mut ink) = (runs.len(), None);
        for cluster in shaped.visual_clusters() {
            if cluster.is_ligature_continuation() {
                if let Some(glyph) = runs.get_mut(first..).and_then(<[Run]>::last_mut) {
                    glyph.glyphs.iter_mut().last().into_iter().for_each(|glyph| {
                        glyph.text_range.end = cluster.text_range().end;
                    });
                }
                continue;
            }
            let of_glyph = cluster.style().brush;
            for glyph in cluster.glyphs() {
                if ink != Some(of_glyph) {
                    ink = Some(of_glyph);
                    let (font, text) = (font.clone(), Rc::clone(text));
                    runs.push(Run { font, size, ink: of_glyph, x: *x, glyphs: Vec::new(), text });
                }
                if let Some(run) = runs.last_mut() {
                    run.glyphs.push(KrillaGlyph::new(
                        GlyphId::new(glyph.id),
                        glyph.advance / size,
                        glyph.x / size,
                        glyph.y / size,
                        0.0,
                        cluster.text_range(),
                        None,
                    ));
                }
                *x += glyph.advance;
            }
        }
    }
}

/// Where in the text no face has a glyph.
fn lacking(layout: &Layout<Ink>) -> Vec<Range<usize>> {
    let mut lacking: Vec<Range<usize>> = Vec::new();
    for cluster in layout.lines().flat_map(|line| line.runs()).flat_map(|run| run.visual_clusters()) {
        if cluster.glyphs().any(|glyph| glyph.id == 0) {
            lacking.push(cluster.text_range());
        }
    }
    lacking.sort_by_key(|range| range.start);
    lacking
}

fn replace(parts: &mut [(String, Look)], lacking: &[Range<usize>]) {
    let mut starts = Vec::new();
    let mut at = 0;
    for (part, _) in &*parts {
        starts.push(at);
        at += part.len();
    }
    // From the end, so that what comes before stays where it is.
    for range in lacking.iter().rev() {
        let place = starts.iter().rposition(|start| *start <= range.start).unwrap_or(0);
        let Some((part, _)) = parts.get_mut(place) else { continue };
        let (from, to) = (range.start - starts[place], (range.end - starts[place]).min(part.len()));
        if part.is_char_boundary(from) && part.is_char_boundary(to) {
            part.replace_range(from..to, UNSHOWN.encode_utf8(&mut [0; 3]));
        }
    }
}

//! Pages and structure into the bytes of a PDF.

use std::collections::BTreeMap;
use std::num::NonZeroU16;

use krilla::Document as Pdf;
use krilla::SerializeSettings;
use krilla::configure::{Accessibility, Archival, ConfigurationBuilder};
use krilla::destination::XyzDestination;
use krilla::embed::{AssociationKind, EmbeddedFile, MimeType};
use krilla::geom::{Point, Rect, Size, Transform};
use krilla::image::Image;
use krilla::metadata::{DateTime, Metadata, TextDirection};
use krilla::outline::{Outline, OutlineNode};
use krilla::page::PageSettings;
use krilla::paint::{Fill, LineCap, Stroke};
use krilla::surface::Surface;
use krilla::tagging::{
    Artifact, ArtifactType, BBox, ContentTag, Identifier, Node as TagNode, SpanTag, TableHeaderScope, Tag,
    TagGroup, TagKind, TagTree,
};

use super::flow::{Bookmark, Flow};
use super::ink::{A4, Ink, LETTER};
use super::sheet::{Node, Owner, Piece, Place, Role, Shape, Tree};
use super::{Form, Paper};

/// What the file says of itself.
pub(super) struct About {
    pub title: String,
    pub subject: String,
    pub people: Vec<String>,
    pub made: DateTime,
    /// What makes the same record the same.
    pub id: String,
    /// The language's tag.
    pub language: &'static str,
    /// The record's data, attached where there is any.
    pub json: Option<Vec<u8>>,
    /// What the attachment is.
    pub attached: String,
}

/// Name of the attachment.
pub(super) const ATTACHED: &str = "record.json";
const PROGRAM: &str = concat!("Panside ", env!("CARGO_PKG_VERSION"));

/// The bytes; an error is what the writer says.
pub(super) fn write(
    flow: Flow<'_>,
    photos: &BTreeMap<&str, Image>,
    about: About,
    (paper, form): (Paper, Form),
) -> Result<Vec<u8>, String> {
    let mut pdf = Pdf::new_with(settings(form)?);
    let (width, height) = match paper {
        Paper::Letter => LETTER,
        Paper::A4 => A4,
    };
    let size = PageSettings::from_wh(width, height).ok_or("PageSettings::from_wh")?;
    let shift = ((width - LETTER.0) / 2.0, (height - LETTER.1) / 2.0);
    let mut contents: Vec<Vec<Identifier>> = vec![Vec::new(); flow.tree.nodes.len()];
    for pieces in &flow.pages {
        let mut page = pdf.start_page_with(size.clone());
        let mut surface = page.surface();
        surface.push_transform(&Transform::from_translate(shift.0, shift.1));
        write_page(&mut surface, pieces, photos, (&flow.tree, form), &mut contents);
        surface.pop();
        surface.finish();
        page.finish();
    }
    if form == Form::Archive {
        pdf.set_tag_tree(tags(&flow.tree, &mut contents, (about.language, shift)));
        pdf.set_outline(outline(&flow.bookmarks, shift.1));
        if let Some(json) = &about.json {
            attach(&mut pdf, &about, json).ok_or("embed_file")?;
        }
    }
    pdf.set_metadata(metadata(about));
    pdf.finish().map_err(|error| format!("{error:?}"))
}

fn settings(form: Form) -> Result<SerializeSettings, String> {
    let configuration = match form {
        Form::Archive => ConfigurationBuilder::new()
            .with_archival_validator(Archival::A3_A)
            .with_accessibility_validator(Accessibility::UA1),
        Form::Twin => ConfigurationBuilder::new().with_archival_validator(Archival::A1_B),
    };
    let configuration = configuration.finish().map_err(|error| format!("{error:?}"))?;
    Ok(SerializeSettings { configuration, enable_tagging: form == Form::Archive, ..Default::default() })
}

fn metadata(about: About) -> Metadata {
    Metadata::new()
        .title(about.title)
        .description(about.subject)
        .authors(about.people)
        .creator(PROGRAM.to_owned())
        .producer(PROGRAM.to_owned())
        .language(about.language.to_owned())
        .text_direction(TextDirection::LeftToRight)
        .document_id(about.id)
        .creation_date(about.made)
}

fn attach(pdf: &mut Pdf, about: &About, json: &[u8]) -> Option<()> {
    pdf.embed_file(EmbeddedFile {
        path: ATTACHED.to_owned(),
        mime_type: MimeType::new("application/json"),
        description: Some(about.attached.clone()),
        association_kind: AssociationKind::Data,
        data: json.to_vec().into(),
        modification_date: Some(about.made),
        compress: Some(true),
        location: None,
    })
}

/// Shapes of one owner that follow each other are one piece of content.
fn write_page(
    surface: &mut Surface<'_>,
    pieces: &[Piece],
    photos: &BTreeMap<&str, Image>,
    (tree, form): (&Tree, Form),
    contents: &mut [Vec<Identifier>],
) {
    for run in pieces.chunk_by(|one, next| one.owner == next.owner) {
        let Some(owner) = run.first().map(|piece| piece.owner) else { continue };
        let identifier = surface.start_tagged(content_tag(owner, tree, form));
        if let Owner::Node(node) = owner {
            contents[node].push(identifier);
        }
        run.iter().for_each(|piece| write_shape(surface, &piece.shape, photos));
        surface.end_tagged();
    }
}

fn content_tag(owner: Owner, tree: &Tree, form: Form) -> ContentTag<'static> {
    let artifact = |kind| ContentTag::Artifact(Artifact::with_kind(kind));
    match owner {
        Owner::Node(node) if matches!(tree.nodes[node].0, Role::Figure { .. }) => ContentTag::Other,
        Owner::Node(_) => ContentTag::Span(SpanTag::empty()),
        Owner::Layout => artifact(ArtifactType::Layout),
        // The form of 2001 knows no heads and feet.
        Owner::Head | Owner::Foot if form == Form::Twin => artifact(ArtifactType::PaginationOther),
        Owner::Head => artifact(ArtifactType::Header),
        Owner::Foot => artifact(ArtifactType::Footer),
    }
}

fn fill(ink: Ink) -> Fill {
    Fill { paint: ink.color().into(), ..Fill::default() }
}

fn write_shape(surface: &mut Surface<'_>, shape: &Shape, photos: &BTreeMap<&str, Image>) {
    match shape {
        Shape::Words { x, baseline, line } => {
            surface.set_stroke(None);
            for run in &line.runs {
                surface.set_fill(Some(fill(run.ink)));
                let start = Point::from_xy(x + run.x, *baseline);
                surface.draw_glyphs(start, &run.glyphs, run.font.clone(), &run.text, run.size, false);
            }
        }
        Shape::Drawn { path, fill: inside, stroke } => {
            surface.set_fill(inside.map(fill));
            surface.set_stroke(stroke.map(|(ink, width)| Stroke {
                paint: ink.color().into(),
                width,
                line_cap: LineCap::Butt,
                ..Stroke::default()
            }));
            surface.draw_path(path);
        }
        Shape::Photo { hash, place } => draw_photo(surface, photos.get(hash.as_str()), *place),
    }
}

fn draw_photo(surface: &mut Surface<'_>, image: Option<&Image>, (x, y, width, height): Place) {
    if let (Some(image), Some(size)) = (image, Size::from_wh(width, height)) {
        surface.push_transform(&Transform::from_translate(x, y));
        surface.draw_image(image.clone(), size);
        surface.pop();
    }
}

/// The structure; the pages' shapes stand shifted on the paper.
fn tags(tree: &Tree, contents: &mut [Vec<Identifier>], (language, shift): (&str, (f32, f32))) -> TagTree {
    let mut tags = TagTree::new().with_lang(Some(language.to_owned()));
    for root in &tree.roots {
        tags.push(group(tree, *root, contents, shift));
    }
    tags
}

fn group(tree: &Tree, node: Node, contents: &mut [Vec<Identifier>], shift: (f32, f32)) -> TagGroup {
    let (role, below) = &tree.nodes[node];
    let own = std::mem::take(&mut contents[node]).into_iter().map(TagNode::from);
    let mut children: Vec<TagNode> = own.collect();
    children.extend(below.iter().map(|child| TagNode::from(group(tree, *child, contents, shift))));
    TagGroup::with_children(kind(role, shift), children)
}

fn kind(role: &Role, shift: (f32, f32)) -> TagKind {
    match role {
        Role::Section => Tag::Section.into(),
        Role::Heading(level, text) => {
            Tag::Hn(NonZeroU16::new(*level).unwrap_or(NonZeroU16::MIN), Some(text.clone())).into()
        }
        Role::Paragraph => Tag::P.into(),
        Role::Table => Tag::Table.into(),
        Role::Row => Tag::TR.into(),
        Role::ColumnHead => Tag::TH(TableHeaderScope::Column).into(),
        Role::RowHead => Tag::TH(TableHeaderScope::Row).into(),
        Role::Cell => Tag::TD.into(),
        Role::Figure { alt, page, place: (x, y, width, height) } => {
            let place = Rect::from_xywh(*x + shift.0, *y + shift.1, *width, *height);
            Tag::Figure(Some(alt.clone())).with_bbox(place.map(|place| BBox::new(*page, place))).into()
        }
    }
}

/// Headings of the second level with those of the third below them; the first is the title.
fn outline(bookmarks: &[Bookmark], shift: f32) -> Outline {
    let mut outline = Outline::new();
    let node = |mark: &Bookmark| {
        OutlineNode::new(
            mark.text.clone(),
            XyzDestination::new(mark.page, Point::from_xy(0.0, mark.y + shift - 8.0)),
        )
    };
    let mut marks = bookmarks.iter().peekable();
    while let Some(mark) = marks.next() {
        let mut above = node(mark);
        while mark.level == 2
            && let Some(below) = marks.next_if(|next| next.level > 2)
        {
            above.push_child(node(below));
        }
        outline.push_child(above);
    }
    outline
}

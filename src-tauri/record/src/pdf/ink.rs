//! Paper, inks and type sizes. All lengths in the PDF are points, 1/72 inch, counted from the top left corner.

use krilla::color::rgb::Color;

/// US Letter, on which all is laid out. A4 is narrower and higher: the same columns stand in its middle.
pub(super) const LETTER: (f32, f32) = (612.0, 792.0);
/// ISO 216, 210 mm by 297 mm.
pub(super) const A4: (f32, f32) = (595.28, 841.89);
/// Where the columns begin and end.
pub(super) const LEFT: f32 = 48.0;
pub(super) const RIGHT: f32 = 564.0;
pub(super) const WIDTH: f32 = RIGHT - LEFT;
/// Where text begins below the running head, and ends above the foot.
pub(super) const TOP: f32 = 62.0;
pub(super) const BOTTOM: f32 = 742.0;

/// What things are drawn with.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub(super) enum Ink {
    /// What is said.
    #[default]
    Black,
    /// What stands around it.
    Dim,
    /// The one accent.
    Accent,
    /// Hairlines between rows.
    Hair,
    /// Bands of what is allowed.
    Band,
}

impl Ink {
    pub fn color(self) -> Color {
        match self {
            Ink::Black => Color::new(0x1b, 0x1b, 0x19),
            Ink::Dim => Color::new(0x54, 0x52, 0x4b),
            Ink::Accent => Color::new(0x0b, 0x55, 0x63),
            Ink::Hair => Color::new(0xcb, 0xc7, 0xbb),
            Ink::Band => Color::new(0xea, 0xe6, 0xda),
        }
    }
}

/// How words look.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Look {
    pub size: f32,
    pub bold: bool,
    pub ink: Ink,
}

impl Look {
    pub const TITLE: Look = Look { size: 20.0, bold: true, ink: Ink::Black };
    pub const SECTION: Look = Look { size: 13.0, bold: true, ink: Ink::Black };
    pub const PART: Look = Look { size: 10.5, bold: true, ink: Ink::Accent };
    pub const LEAD: Look = Look { size: 10.0, bold: false, ink: Ink::Black };
    pub const BODY: Look = Look { size: 9.0, bold: false, ink: Ink::Black };
    pub const ASIDE: Look = Look { size: 9.0, bold: false, ink: Ink::Dim };
    pub const SMALL: Look = Look { size: 8.0, bold: false, ink: Ink::Black };
    pub const NOTE: Look = Look { size: 8.0, bold: false, ink: Ink::Dim };
    pub const FOOT: Look = Look { size: 7.0, bold: false, ink: Ink::Dim };

    pub const fn inked(self, ink: Ink) -> Look {
        Look { ink, ..self }
    }

    pub const fn strong(self) -> Look {
        Look { bold: true, ..self }
    }
}

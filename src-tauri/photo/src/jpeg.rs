//! The structure of a JPEG file: which segments stay, and where the file really ends.
//!
//! A segment stays only if decoding needs it: tables, frame and scan headers, JFIF, the Adobe colour
//! transform and the colour profile. So EXIF, XMP, IPTC, comments and makers' private segments go, also
//! between two scans, and with them everything behind the end mark (motion photos, second pictures).
//! The compressed pixels are copied untouched. Marker names and structure: ITU-T T.81, annex B.

use crate::parts::{LARGEST_PROFILE, Parts, ROOM_FOR_NOTES};
use crate::scans::Coverage;
use crate::{Damage, Kind, PhotoError};

const SOI: u8 = 0xD8;
const EOI: u8 = 0xD9;
const SOF2: u8 = 0xC2;
const SOS: u8 = 0xDA;
const APP0: u8 = 0xE0;
const APP1: u8 = 0xE1;
const APP2: u8 = 0xE2;
const APP14: u8 = 0xEE;
const EXIF: &[u8] = b"Exif\0\0";
const PROFILE: &[u8] = b"ICC_PROFILE\0";
/// The most scans: usual progressive files have about ten. Each takes time over the whole picture, however short it is.
const MOST_SCANS: usize = 100;

/// Takes a JPEG file apart.
///
/// # Errors
/// [`PhotoError::CutOff`] if the bytes end before the end mark or scans are missing, [`PhotoError::Damaged`] if the segments
/// contradict themselves.
pub(crate) fn parts(bytes: &[u8]) -> Result<Parts, PhotoError> {
    let mut file = Cursor { bytes, at: 2 };
    let mut found = Found::new(bytes.len());
    loop {
        let marker = file.marker()?;
        if marker == EOI {
            break;
        }
        if has_body(marker) {
            let body = file.body()?;
            let scan = if marker == SOS { file.scan()? } else { &[] };
            found.add(marker, body, scan)?;
        }
    }
    found.into_parts()
}

/// What was found in a file so far.
struct Found {
    head: Vec<u8>,
    tail: Vec<u8>,
    exif: Option<Vec<u8>>,
    frame: Option<Frame>,
    /// Bytes of the colour profile.
    profile: usize,
    scans: usize,
    /// The first scan brings one component of several.
    apart: bool,
    progressive: Option<Coverage>,
}

impl Found {
    fn new(length: usize) -> Found {
        let (head, tail) = (vec![0xFF, SOI], Vec::with_capacity(length + ROOM_FOR_NOTES));
        Found { head, tail, exif: None, frame: None, profile: 0, scans: 0, apart: false, progressive: None }
    }

    fn add(&mut self, marker: u8, body: &[u8], scan: &[u8]) -> Result<(), PhotoError> {
        match marker {
            // JFIF stands first or nowhere.
            APP0 if body.starts_with(b"JFIF\0") && self.head.len() == 2 && self.tail.is_empty() => {
                push(&mut self.head, marker, body);
            }
            APP1 if self.exif.is_none() => self.exif = body.strip_prefix(EXIF).map(<[u8]>::to_vec),
            SOS => {
                push(&mut self.tail, marker, body);
                self.tail.extend_from_slice(scan);
                self.scans += 1;
                if self.scans > MOST_SCANS {
                    return Err(damaged(Damage::TooManyScans));
                }
                let all = self.frame.as_ref().map(|frame| frame.components);
                self.apart |= self.scans == 1 && body.first().map(|count| usize::from(*count)) != all;
                self.progressive.iter_mut().for_each(|coverage| coverage.add(body));
            }
            _ if is_frame(marker) => {
                if self.frame.replace(Frame::of(body)?).is_some() {
                    return Err(damaged(Damage::SizeTwice));
                }
                self.progressive = (marker == SOF2).then(|| Coverage::of_frame(body));
                push(&mut self.tail, marker, body);
            }
            APP2 if body.starts_with(PROFILE) => {
                self.profile += body.len();
                if self.profile > LARGEST_PROFILE {
                    return Err(damaged(Damage::ProfileTooLarge));
                }
                push(&mut self.tail, marker, body);
            }
            _ if is_needed(marker, body) => push(&mut self.tail, marker, body),
            _ => {}
        }
        Ok(())
    }

    fn into_parts(self) -> Result<Parts, PhotoError> {
        let Found { head, mut tail, exif, frame, scans, apart, progressive, .. } = self;
        let frame = frame.ok_or_else(|| damaged(Damage::NoSize))?;
        if scans == 0 {
            return Err(damaged(Damage::NoPicture));
        }
        let decoding = frame.decoding(apart || progressive.is_some());
        if progressive.is_some_and(|coverage| !coverage.is_whole()) {
            return Err(PhotoError::CutOff { kind: Kind::Jpeg });
        }
        tail.extend_from_slice(&[0xFF, EOI]);
        let Frame { width, height, .. } = frame;
        Ok(Parts { kind: Kind::Jpeg, width, height, decoding, exif, head, tail })
    }
}

/// The APP1 segment that holds `exif`, which must be shorter than 65,527 bytes (ours is below 100).
pub(crate) fn exif_segment(exif: &[u8]) -> Vec<u8> {
    let mut segment = Vec::new();
    push(&mut segment, APP1, &[EXIF, exif].concat());
    segment
}

fn damaged(what: Damage) -> PhotoError {
    PhotoError::Damaged { kind: Kind::Jpeg, what }
}

/// Appends a segment. `body` comes from a segment, so that its length fits in 16 bits.
fn push(out: &mut Vec<u8>, marker: u8, body: &[u8]) {
    let length = (body.len() + 2) as u16;
    out.extend_from_slice(&[0xFF, marker]);
    out.extend_from_slice(&length.to_be_bytes());
    out.extend_from_slice(body);
}

/// Stuffing, TEM, restart marks and SOI stand alone; every other marker is followed by a length and a body.
fn has_body(marker: u8) -> bool {
    !matches!(marker, 0x00 | 0x01 | 0xD0..=SOI)
}

/// SOF0 to SOF15, without DHT, JPG and DAC, which lie in the same row.
fn is_frame(marker: u8) -> bool {
    matches!(marker, 0xC0..=0xCF) && !matches!(marker, 0xC4 | 0xC8 | 0xCC)
}

/// Whether decoding needs this segment: DHT, DAC, DQT, DNL, DRI, the Adobe transform.
fn is_needed(marker: u8, body: &[u8]) -> bool {
    match marker {
        0xC4 | 0xCC | 0xDB..=0xDD => true,
        APP14 => body.starts_with(b"Adobe"),
        _ => false,
    }
}

/// What a frame header says: precision (1 byte), height (2), width (2), number of components (1), and three bytes for each, the
/// second of which has the sampling, across in the upper half and down in the lower.
struct Frame {
    width: u32,
    height: u32,
    components: usize,
    /// Most samples across and down, and samples of all components, in the smallest unit of coding.
    across: u64,
    down: u64,
    samples: u64,
}

impl Frame {
    fn of(body: &[u8]) -> Result<Frame, PhotoError> {
        let [_, h1, h2, w1, w2, _, ref listed @ ..] = *body else {
            return Err(damaged(Damage::FrameTooShort));
        };
        let (width, height) = (u16::from_be_bytes([w1, w2]), u16::from_be_bytes([h1, h2]));
        if width == 0 || height == 0 {
            return Err(damaged(Damage::SizeZero));
        }
        let sampling =
            listed.as_chunks::<3>().0.iter().map(|[_, s, _]| (u64::from(s >> 4), u64::from(s & 15)));
        Ok(Frame {
            width: width.into(),
            height: height.into(),
            components: sampling.clone().count(),
            across: sampling.clone().map(|(across, _)| across).max().unwrap_or(1).max(1),
            down: sampling.clone().map(|(_, down)| down).max().unwrap_or(1).max(1),
            samples: sampling.map(|(across, down)| across * down).sum(),
        })
    }

    /// Bytes of memory that decoding takes: 3 a pixel, and where the scans come one after the other also 2 for each
    /// coefficient, of whole units of 8 times 8 in each component (T.81, A.2).
    fn decoding(&self, scans_apart: bool) -> u64 {
        let units =
            u64::from(self.width).div_ceil(8 * self.across) * u64::from(self.height).div_ceil(8 * self.down);
        let coefficients = if scans_apart { units * self.samples * 64 } else { 0 };
        3 * u64::from(self.width) * u64::from(self.height) + 2 * coefficients
    }
}

struct Cursor<'a> {
    bytes: &'a [u8],
    at: usize,
}

impl<'a> Cursor<'a> {
    fn byte(&mut self) -> Result<u8, PhotoError> {
        let byte = self.bytes.get(self.at).ok_or(PhotoError::CutOff { kind: Kind::Jpeg })?;
        self.at += 1;
        Ok(*byte)
    }

    fn slice(&mut self, length: usize) -> Result<&'a [u8], PhotoError> {
        let slice =
            self.bytes.get(self.at..self.at + length).ok_or(PhotoError::CutOff { kind: Kind::Jpeg })?;
        self.at += length;
        Ok(slice)
    }

    /// The next marker. Stray bytes before it are passed over, as other readers do; they are not kept.
    fn marker(&mut self) -> Result<u8, PhotoError> {
        while self.byte()? != 0xFF {}
        loop {
            match self.byte()? {
                0xFF => {}
                marker => return Ok(marker),
            }
        }
    }

    /// The body of a segment, behind its length.
    fn body(&mut self) -> Result<&'a [u8], PhotoError> {
        let length = u16::from_be_bytes([self.byte()?, self.byte()?]);
        let length = length.checked_sub(2).ok_or_else(|| damaged(Damage::SegmentLength))?;
        self.slice(length.into())
    }

    /// The compressed data of a scan, up to the marker that ends it: stuffed bytes and restart marks are
    /// part of the scan (T.81, B.1.1.5).
    fn scan(&mut self) -> Result<&'a [u8], PhotoError> {
        let rest = &self.bytes[self.at..];
        let mut from = 0;
        while let Some(at) = rest[from..].iter().position(|&byte| byte == 0xFF).map(|at| from + at) {
            match rest.get(at + 1) {
                Some(0x00 | 0xD0..=0xD7) => from = at + 2,
                Some(0xFF) => from = at + 1,
                Some(_) => return self.slice(at),
                None => break,
            }
        }
        Err(PhotoError::CutOff { kind: Kind::Jpeg })
    }
}

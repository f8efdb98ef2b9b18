//! The record as pages, with photos from the store.

use std::io::Cursor;

use image::{DynamicImage, ImageFormat, Rgb, RgbImage};
use panside_bay::enter::{EntryValue, JobId};
use panside_bay::record::{Document, Extent, Pages, Paper, Photo, Standing};

use crate::support::Shop;

const RECORD: Pages = Pages::Record(Extent::File);

/// A JPEG, 40 pixels wide and 30 high as it is stored.
fn jpeg() -> Vec<u8> {
    let picture = RgbImage::from_fn(40, 30, |x, y| Rgb([x.to_le_bytes()[0], y.to_le_bytes()[0], 90]));
    let mut bytes = Cursor::new(Vec::new());
    DynamicImage::from(picture).write_to(&mut bytes, ImageFormat::Jpeg).unwrap();
    bytes.into_inner()
}

/// The same as a camera writes it that was held upright: EXIF tag 0x0112, orientation, is 6: turn a quarter
/// to the right.
fn held_upright() -> Vec<u8> {
    let tiff = b"II*\0\x08\0\0\0\x01\0\x12\x01\x03\0\x01\0\0\0\x06\0\0\0\0\0\0\0";
    let mut exif = b"\xff\xe1\0\0Exif\0\0".to_vec();
    exif.extend(tiff);
    exif[3] = u8::try_from(exif.len() - 2).unwrap();
    let mut bytes = jpeg();
    bytes.splice(2..2, exif);
    bytes
}

/// The record of a job in which this photo was entered.
fn record_with(shop: &mut Shop, job: JobId, bytes: &[u8]) -> Document {
    let EntryValue::Photo { hash, width, height } = shop.bay.add_photo(job, bytes).unwrap() else {
        panic!("a photo")
    };
    let mut document = shop.bay.record(job).unwrap();
    let by = document.started.clone().unwrap();
    let (step, title) = ("pan".to_owned(), "Pan down".to_owned());
    let (label, of) = ("Photo of the pan".to_owned(), "the pan".to_owned());
    let (standing, first_page) = (Standing::Counts, false);
    let photo =
        Photo { hash, step, title, label, of, caption: None, width, height, standing, first_page, by };
    document.photos.push(photo);
    document
}

fn has(pdf: &[u8], what: &[u8]) -> bool {
    pdf.windows(what.len()).any(|window| window == what)
}

#[test]
fn a_photo_that_fits_goes_into_the_pages_as_it_is_kept() {
    let mut shop = Shop::new();
    let job = shop.start();
    let document = record_with(&mut shop, job, &jpeg());
    let kept = std::fs::read(only_file(&shop.dir.path().join("photos"))).unwrap();
    assert!(has(&shop.bay.pages(&document, RECORD, Paper::Letter).unwrap(), &kept));
}

#[test]
fn a_photo_taken_with_the_camera_held_upright_stands_upright_on_the_page() {
    let mut shop = Shop::new();
    let job = shop.start();
    let document = record_with(&mut shop, job, &held_upright());
    assert_eq!((document.photos[0].width, document.photos[0].height), (30, 40));
    let pages = shop.bay.pages(&document, RECORD, Paper::Letter).unwrap();
    assert!(has(&pages, b"/Width 30") && has(&pages, b"/Height 40"));
    assert!(!has(&pages, b"/Width 40"));
}

#[test]
fn a_photo_whose_file_is_lost_or_changed_keeps_no_record_from_being_written() {
    let mut shop = Shop::new();
    let job = shop.start();
    let document = record_with(&mut shop, job, &jpeg());
    let whole = shop.bay.pages(&document, RECORD, Paper::Letter).unwrap();
    let file = only_file(&shop.dir.path().join("photos"));
    std::fs::write(&file, b"something else").unwrap();
    let changed = shop.bay.pages(&document, RECORD, Paper::Letter).unwrap();
    std::fs::remove_file(&file).unwrap();
    let lost = shop.bay.pages(&document, RECORD, Paper::Letter).unwrap();
    assert!(has(&whole, b"/DCTDecode"));
    assert!(!has(&changed, b"/DCTDecode") && !has(&lost, b"/DCTDecode"));
    assert_ne!(changed, lost, "each says its own reason");
}

#[test]
fn the_customers_copy_has_only_the_photos_of_the_first_page() {
    let mut shop = Shop::new();
    let job = shop.start();
    let mut document = record_with(&mut shop, job, &jpeg());
    let copy =
        |shop: &Shop, document: &Document| shop.bay.pages(document, Pages::Customer, Paper::Letter).unwrap();
    assert!(!has(&copy(&shop, &document), b"/DCTDecode"));
    document.photos[0].first_page = true;
    assert!(has(&copy(&shop, &document), b"/DCTDecode"));
}

#[test]
fn the_record_of_a_job_is_pages_with_that_jobs_words() {
    let mut shop = Shop::new();
    let job = shop.start();
    let document = shop.bay.record(job).unwrap();
    let pages = shop.bay.pages(&document, RECORD, Paper::Letter).unwrap();
    assert!(pages.starts_with(b"%PDF-1.7") && has(&pages, b"RO 1042"));
}

/// The one file below a folder.
fn only_file(dir: &std::path::Path) -> std::path::PathBuf {
    let entry = std::fs::read_dir(dir).unwrap().next().unwrap().unwrap();
    if entry.file_type().unwrap().is_dir() { only_file(&entry.path()) } else { entry.path() }
}

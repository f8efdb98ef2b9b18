//! Lines of at most 100 characters: paragraphs, and rows whose columns stand under each other.

use panside_messages::clean::line as clean;

use crate::say::Side;

/// Characters in a line.
pub(super) const WIDTH: usize = 100;
/// Spaces between two columns.
const GAP: usize = 2;
/// No column is squeezed below this.
const NARROWEST: usize = 8;

/// A text that grows line by line.
#[derive(Default)]
pub(super) struct Page(String);

impl Page {
    pub fn into_text(self) -> String {
        self.0
    }

    pub fn blank(&mut self) {
        self.0.push('\n');
    }

    /// A heading after an empty line, with a mark on the right; an empty one is none.
    pub fn heading(&mut self, text: &str, mark: &str) {
        self.blank();
        self.ends(&text.to_uppercase(), mark);
    }

    /// A line with one text on the left and one on the right; both below each other when they don't fit.
    pub fn ends(&mut self, left: &str, right: &str) {
        let (left, right) = (clean(left), clean(right));
        match WIDTH.checked_sub(length(&left) + length(&right)) {
            Some(room) if room >= GAP && !right.is_empty() => {
                self.line(&format!("{left}{}{right}", " ".repeat(room)));
            }
            _ => {
                [left, right].iter().filter(|text| !text.is_empty()).for_each(|text| self.paragraph(0, text))
            }
        }
    }

    /// A text in as many lines as it needs, all of them indented.
    pub fn paragraph(&mut self, indent: usize, text: &str) {
        for line in wrap(text, WIDTH.saturating_sub(indent)) {
            self.line(&format!("{}{line}", " ".repeat(indent)));
        }
    }

    /// Rows of cells, each column as wide as its widest cell. What doesn't fit is wrapped within its column, the widest
    /// column first. A row with fewer cells than `sides` ends early.
    pub fn table(&mut self, indent: usize, sides: &[Side], rows: &[Vec<String>]) {
        let widths = widths(WIDTH.saturating_sub(indent), sides.len(), rows);
        for row in rows {
            let cells: Vec<_> = row.iter().zip(&widths).map(|(cell, width)| wrap(cell, *width)).collect();
            let lines = cells.iter().map(Vec::len).max().unwrap_or(0);
            for at in 0..lines {
                let mut line = " ".repeat(indent);
                for ((cell, width), side) in cells.iter().zip(&widths).zip(sides) {
                    let text = cell.get(at).map_or("", String::as_str);
                    let room = " ".repeat(width.saturating_sub(length(text)));
                    match side {
                        Side::Left => line.extend([text, &room]),
                        Side::Right => line.extend([room.as_str(), text]),
                    }
                    line.push_str(&" ".repeat(GAP));
                }
                self.line(&line);
            }
        }
    }

    fn line(&mut self, text: &str) {
        self.0.push_str(text.trim_end());
        self.0.push('\n');
    }
}

fn widths(room: usize, columns: usize, rows: &[Vec<String>]) -> Vec<usize> {
    let widest = |at: usize| rows.iter().filter_map(|row| row.get(at)).map(|cell| length(&clean(cell))).max();
    let mut widths: Vec<usize> = (0..columns).map(|at| widest(at).unwrap_or(0)).collect();
    let gaps = GAP * columns.saturating_sub(1);
    loop {
        let over = (widths.iter().sum::<usize>() + gaps).saturating_sub(room);
        let Some(widest) = widths.iter_mut().max().filter(|width| over > 0 && **width > NARROWEST) else {
            return widths;
        };
        *widest -= 1;
    }
}

/// A text in lines of at most `width` characters, broken between words. A word that is longer is cut.
fn wrap(text: &str, width: usize) -> Vec<String> {
    let width = width.max(1);
    let (mut lines, mut line) = (Vec::new(), String::new());
    for word in clean(text).split_whitespace() {
        let mut word: Vec<char> = word.chars().collect();
        let gap = usize::from(!line.is_empty());
        if length(&line) + gap + word.len() <= width {
            line.extend([' '].iter().take(gap).chain(&word));
            continue;
        }
        if gap > 0 {
            lines.push(std::mem::take(&mut line));
        }
        while word.len() > width {
            lines.push(word.drain(..width).collect());
        }
        line.extend(word);
    }
    lines.push(line);
    lines
}

fn length(text: &str) -> usize {
    text.chars().count()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_that_do_not_fit_go_into_the_next_line_and_long_ones_are_cut() {
        assert_eq!(wrap("pan bolts, two stages", 10), ["pan bolts,", "two stages"]);
        assert_eq!(wrap("a 0123456789abc z", 5), ["a", "01234", "56789", "abc z"]);
        assert_eq!(wrap("", 5), [""]);
    }

    #[test]
    fn nothing_that_was_typed_can_steer_a_terminal() {
        assert_eq!(wrap("red\u{1b}[31m\u{202e}\r\nend", 40), ["red [31m end"]);
    }

    #[test]
    fn columns_stand_under_each_other_and_the_widest_gives_way() {
        let mut page = Page::default();
        let row = |name: &str, count: &str| vec![name.to_owned(), count.to_owned()];
        let long = "x".repeat(60) + " " + &"y".repeat(60);
        page.table(2, &[Side::Left, Side::Right], &[row("pan bolts", "16"), row(&long, "3")]);
        let text = page.into_text();
        let lines: Vec<_> = text.lines().collect();
        assert_eq!(lines.len(), 3);
        assert!(lines.iter().all(|line| length(line) <= WIDTH));
        assert!(lines[0].ends_with("  16") && lines[1].ends_with("   3"));
        assert_eq!(length(lines[0]), length(lines[1]));
    }
}

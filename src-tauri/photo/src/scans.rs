//! Whether the scans of a progressive JPEG bring all of its coefficients.
//!
//! A progressive file that was cut between two scans and closed with an end mark decodes without complaint,
//! only blurred or grey. So the scan headers are added up: every component needs its coefficients 0 to 63
//! down to the last bit (ITU-T T.81, G.1.1.1). A cut inside the very last scan is not found this way; it
//! costs the finest detail of one component, no part of the picture.

/// Which coefficients of which component are complete so far.
pub(crate) struct Coverage {
    /// Component identifier and one bit a coefficient.
    components: Vec<(u8, u64)>,
}

impl Coverage {
    /// Starts with the components that a frame header (the body of SOF2) lists from its sixth byte on.
    pub(crate) fn of_frame(frame: &[u8]) -> Coverage {
        let listed = frame.get(6..).unwrap_or_default().as_chunks::<3>().0;
        Coverage { components: listed.iter().map(|[id, ..]| (*id, 0)).collect() }
    }

    /// Adds a scan, given the body of its SOS segment: the number of components, two bytes for each, first
    /// and last coefficient, and the bit positions before and after. A malformed one adds nothing.
    pub(crate) fn add(&mut self, scan: &[u8]) {
        let Some((&count, rest)) = scan.split_first() else { return };
        let Some((ids, &[first, last, positions])) = rest.split_at_checked(2 * usize::from(count)) else {
            return;
        };
        // Position 0 after the scan means: down to the last bit.
        if first > last || last > 63 || positions & 0x0F != 0 {
            return;
        }
        let brought = (u64::MAX >> (63 - last)) & (u64::MAX << first);
        for [id, _] in ids.as_chunks::<2>().0 {
            self.components
                .iter_mut()
                .filter(|(known, _)| known == id)
                .for_each(|(_, bits)| *bits |= brought);
        }
    }

    /// Whether nothing is missing.
    pub(crate) fn is_whole(&self) -> bool {
        self.components.iter().all(|(_, bits)| *bits == u64::MAX)
    }
}

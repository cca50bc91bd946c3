//! Bytes made fewer, and written as characters.

use std::io::Write;

use lzma_rust2::{EncodeMode, LzmaOptions, LzmaWriter, MfType};

use crate::failure::{About, Outcome};

/// Larger than all parts together, so that any of them can repeat any other.
const REACH_BYTES: u32 = 1 << 20;

/// Scripts and wasm repeat themselves at any place, not at every second or fourth: with bits for the
/// place the file is 0.3 % larger.
const PLACE_BITS: u32 = 0;

/// Stands before a character that was moved.
const MARK: u16 = 0x21;

/// Where those go that cannot stay: there, all can.
const MOVED_BY: u16 = 0x5000;

/// The bytes by LZMA, as a `.lzma` file; an odd one gets a 0 behind it, which belongs to nothing. Deflate
/// would leave 205 KB, more than there is room for.
pub fn packed(bytes: &[u8]) -> Outcome<Vec<u8>> {
    let options = LzmaOptions {
        dict_size: REACH_BYTES,
        lc: LzmaOptions::LC_DEFAULT,
        lp: PLACE_BITS,
        pb: PLACE_BITS,
        mode: EncodeMode::Normal,
        nice_len: LzmaOptions::NICE_LEN_MAX,
        mf: MfType::Bt4,
        depth_limit: 0,
        preset_dict: None,
    };
    let length = Some(bytes.len() as u64);
    let mut writer = LzmaWriter::new_use_header(Vec::new(), &options, length).about("lzma")?;
    writer.write_all(bytes).about("lzma")?;
    let mut packed = writer.finish().about("lzma")?;
    packed.resize(packed.len().next_multiple_of(2), 0);
    Ok(packed)
}

/// Each two bytes as a character of UTF-16, the lower one first. `www/packed.js` reads them.
pub fn characters(bytes: &[u8]) -> Vec<u16> {
    let mut written = Vec::new();
    for pair in bytes.as_chunks().0 {
        let character = u16::from_le_bytes(*pair);
        if stays(character) {
            written.push(character);
        } else {
            written.extend([MARK, character.wrapping_add(MOVED_BY)]);
        }
    }
    written
}

/// Whether nothing on the way changes the character: it is no sign of HTML and no space, steers neither
/// lines nor the direction of a text, and is not half of a pair or kept from use.
fn stays(character: u16) -> bool {
    !matches!(
        character,
        0..0xA0 | 0x2000..0x2070 | 0xD800..0xE000 | 0xFDD0..0xFDF0 | 0xFEFF | 0xFFF0..=0xFFFF
    )
}

#[cfg(test)]
mod tests {
    use std::io::Read;

    use lzma_rust2::LzmaReader;

    use super::*;

    /// As `www/packed.js` reads.
    fn read(characters: &[u16]) -> Vec<u8> {
        let mut bytes = Vec::new();
        let mut rest = characters.iter();
        while let Some(character) = rest.next() {
            let pair = match *character {
                MARK => rest.next().expect("something after the mark").wrapping_sub(MOVED_BY),
                plain => plain,
            };
            bytes.extend(pair.to_le_bytes());
        }
        bytes
    }

    #[test]
    fn every_two_bytes_come_back() {
        for pair in 0..=u16::MAX {
            let written = characters(&pair.to_le_bytes());
            assert_eq!(read(&written), pair.to_le_bytes(), "{pair:04x}");
            let is_moved = written.len() == 2 && written[0] == MARK;
            let last = written[written.len() - 1];
            assert!((written.len() == 1 || is_moved) && stays(last), "{pair:04x}");
        }
        assert_eq!(characters(&[0x34, 0x12, 0x3C, 0]), [0x1234, MARK, 0x503C]);
    }

    #[test]
    fn what_is_packed_can_be_unpacked() {
        let bytes: Vec<u8> =
            (0..70_000_u32).flat_map(|n| (n % 1000 * (n % 1000) % 251).to_le_bytes()).collect();
        let packed = packed(&bytes).unwrap();
        assert!(packed.len() < bytes.len() / 10);
        let mut unpacked = Vec::new();
        let mut reader = LzmaReader::new_mem_limit(&packed[..], u32::MAX, None).unwrap();
        reader.read_to_end(&mut unpacked).unwrap();
        assert_eq!(unpacked, bytes);
    }
}

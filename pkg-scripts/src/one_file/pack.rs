//! Bytes made fewer, and written as characters.

use std::io::Write;

use lzma_rust2::{EncodeMode, LzmaOptions, LzmaWriter, MfType};

use crate::failure::{About, Outcome};

/// Larger than all parts together, so that any of them can repeat any other.
const REACH_BYTES: u32 = 1 << 20;

/// Scripts and wasm repeat themselves at any place, not at every second or fourth: with bits for the
/// place the file is 0.3 % larger.
const PLACE_BITS: u32 = 0;

/// What stands in for a barred character differs from it by this bit, and is never barred itself.
const STAND_IN: u16 = 0x8000;

/// The character that tells of fifteen others that each stands for itself; a bit more for one that stands in.
const THEMSELVES: u16 = 0x3000;
const TOLD_AT_ONCE: u16 = 15;

/// The bytes by LZMA, as a `.lzma` file; an odd one gets a 0 behind it, which belongs to nothing. Deflate
/// leaves a fifth more, for which there is no room.
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

/// Each two bytes as a character of UTF-16, the lower one first. Where a character could be itself or
/// stand in for a barred one, a bit tells which: fifteen such bits are a character behind the first of the
/// fifteen. So all that is barred costs 0.5 %. `www/packed.js` reads them.
pub fn characters(bytes: &[u8]) -> Vec<u16> {
    let mut written = Vec::new();
    let (mut telling, mut told) = (0, TOLD_AT_ONCE);
    for pair in bytes.as_chunks().0 {
        let character = u16::from_le_bytes(*pair);
        let stands_in = is_barred(character);
        let shown = if stands_in { character ^ STAND_IN } else { character };
        written.push(shown);
        if is_barred(shown ^ STAND_IN) {
            if told == TOLD_AT_ONCE {
                (telling, told) = (written.len(), 0);
                written.push(THEMSELVES);
            }
            written[telling] += u16::from(stands_in) << told;
            told += 1;
        }
    }
    written
}

/// Whether something on the way could change the character: it is a sign of HTML or a space, steers
/// lines or the direction of a text, is half of a pair, or lies where some are kept from use.
fn is_barred(character: u16) -> bool {
    matches!(character, 0..0xA0 | 0x2000..0x2070 | 0xD800..0xE000 | 0xFDD0..)
}

#[cfg(test)]
mod tests {
    use std::io::Read;

    use lzma_rust2::LzmaReader;

    use super::*;

    /// As `www/packed.js` reads.
    fn read(characters: &[u16]) -> Vec<u8> {
        let (mut bytes, mut bits, mut left) = (Vec::new(), 0, 0);
        let mut rest = characters.iter();
        while let Some(&shown) = rest.next() {
            let mut character = shown;
            if is_barred(shown ^ STAND_IN) {
                if left == 0 {
                    bits = rest.next().expect("a character that tells") - THEMSELVES;
                    left = TOLD_AT_ONCE;
                }
                if bits % 2 == 1 {
                    character ^= STAND_IN;
                }
                bits /= 2;
                left -= 1;
            }
            bytes.extend(character.to_le_bytes());
        }
        bytes
    }

    #[test]
    fn every_two_bytes_come_back_and_no_barred_character_is_written() {
        let bytes: Vec<u8> = (0..=u16::MAX).rev().flat_map(u16::to_le_bytes).collect();
        let written = characters(&bytes);
        assert!(!written.iter().any(|character| is_barred(*character)));
        assert_eq!(read(&written), bytes);
        for pair in 0..=u16::MAX {
            assert_eq!(read(&characters(&pair.to_le_bytes())), pair.to_le_bytes(), "{pair:04x}");
        }
        let letter_less_than_both = [0x34, 0x12, 0x3C, 0x00, 0x3C, 0x80];
        assert_eq!(characters(&letter_less_than_both), [0x1234, 0x803C, THEMSELVES + 1, 0x803C]);
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

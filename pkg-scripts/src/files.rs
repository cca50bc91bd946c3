//! Reads, copies and lists files; every path in a list is relative, with `/`.

use std::fs;
use std::path::Path;

use crate::failure::{About, Outcome};

/// The text of a file.
pub fn read_text(path: &Path) -> Outcome<String> {
    fs::read_to_string(path).about(path.display())
}

/// The bytes of a file.
pub fn read_bytes(path: &Path) -> Outcome<Vec<u8>> {
    fs::read(path).about(path.display())
}

/// Writes a file, and the folders above it.
pub fn write(path: &Path, bytes: impl AsRef<[u8]>) -> Outcome {
    if let Some(folder) = path.parent() {
        fs::create_dir_all(folder).about(folder.display())?;
    }
    fs::write(path, bytes).about(path.display())
}

/// Every file below `folder`, sorted, so that the same files always give the same list.
pub fn list(folder: &Path) -> Outcome<Vec<String>> {
    let mut found = Vec::new();
    collect(folder, "", &mut found)?;
    found.sort();
    Ok(found)
}

/// Copies the files below one folder that `wanted` picks into another.
pub fn copy(from: &Path, to: &Path, wanted: fn(&str) -> bool) -> Outcome {
    for path in list(from)?.iter().filter(|path| wanted(path)) {
        write(&to.join(path), read_bytes(&from.join(path))?)?;
    }
    Ok(())
}

/// Removes a folder that may not be there.
pub fn remove_folder(folder: &Path) -> Outcome {
    if folder.exists() {
        fs::remove_dir_all(folder).about(folder.display())?;
    }
    Ok(())
}

/// Puts a finished folder in the place of an old one, so that a server never sees a half-built page.
pub fn swap(finished: &Path, place: &Path) -> Outcome {
    let old = place.with_extension("old");
    remove_folder(&old)?;
    if place.exists() {
        fs::rename(place, &old).about(place.display())?;
    }
    fs::rename(finished, place).about(finished.display())?;
    remove_folder(&old)
}

fn collect(folder: &Path, above: &str, found: &mut Vec<String>) -> Outcome {
    for entry in fs::read_dir(folder).about(folder.display())? {
        let entry = entry.about(folder.display())?;
        let name = entry.file_name().to_string_lossy().into_owned();
        let path = format!("{above}{name}");
        if entry.path().is_dir() {
            collect(&entry.path(), &format!("{path}/"), found)?;
        } else {
            found.push(path);
        }
    }
    Ok(())
}

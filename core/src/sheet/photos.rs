//! The designer's own pictures on a sheet. Their files are read by whoever may read files;
//! here they are bytes and a caption.

use std::fmt;
use std::sync::Arc;

use base64::Engine as _;

/// A photograph or a logo, ready to be printed.
#[derive(Clone, PartialEq, Eq)]
pub struct SheetPhoto {
    /// What stands under it; may be empty.
    pub caption: String,
    /// The file, a JPEG or a PNG, upright.
    pub bytes: Arc<[u8]>,
    /// Width and height, pixels.
    pub size: [u32; 2],
}

impl SheetPhoto {
    /// Whether it is a PNG, by the first bytes of its file (PNG, W3C, 5.2); else a JPEG.
    pub fn is_png(&self) -> bool {
        self.bytes.starts_with(b"\x89PNG")
    }

    /// The picture as an address that holds it whole (RFC 2397).
    pub(super) fn address(&self) -> String {
        let kind = if self.is_png() { "png" } else { "jpeg" };
        let data = base64::engine::general_purpose::STANDARD.encode(&self.bytes);
        format!("data:image/{kind};base64,{data}")
    }
}

impl fmt::Debug for SheetPhoto {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        // Its bytes tell nobody anything.
        let mut shown = f.debug_struct("SheetPhoto");
        shown.field("caption", &self.caption).field("size", &self.size).finish()
    }
}

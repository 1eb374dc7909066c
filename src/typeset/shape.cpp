#include "typeset/shape.h"

#include "base/utf8.h"
#include "typeset/face_data.h"

#include <cassert>
#include <hb.h>

namespace thawslip::typeset {
namespace {

using Buffer = HbHandle<hb_buffer_t, hb_buffer_destroy>;

hb_script_t harfbuzz_script(unicode::Script script) {
    switch (script) {
    case unicode::Script::Latin: return HB_SCRIPT_LATIN;
    case unicode::Script::Greek: return HB_SCRIPT_GREEK;
    case unicode::Script::Cyrillic: return HB_SCRIPT_CYRILLIC;
    case unicode::Script::Armenian: return HB_SCRIPT_ARMENIAN;
    case unicode::Script::Georgian: return HB_SCRIPT_GEORGIAN;
    case unicode::Script::Common:
    case unicode::Script::Other: break;
    }
    assert(false && "a stretch has one of the scripts that are set");
    return HB_SCRIPT_LATIN;
}

/// A face of signs may have no hyphen; then there is none to draw.
bool draws_hyphen(const Stretch& stretch, const Face& face) {
    return stretch.ending == Ending::Hyphen && face.glyph_of(U'-') != 0;
}

/// The stretch's characters, each with its byte offset as cluster. Language and direction are
/// given, never guessed: HarfBuzz guesses from the user's locale.
Buffer fill(const Stretch& stretch, const Face& face) {
    Buffer buffer{hb_buffer_create()};
    auto* b = buffer.get();
    hb_buffer_set_content_type(b, HB_BUFFER_CONTENT_TYPE_UNICODE);
    hb_buffer_set_direction(b, HB_DIRECTION_LTR);
    hb_buffer_set_script(b, harfbuzz_script(stretch.script));
    hb_buffer_set_language(b, hb_language_from_string("en", -1));
    for (std::size_t at = stretch.begin; at < stretch.end;) {
        const auto cluster = static_cast<unsigned>(at);
        char32_t c = next_code_point(stretch.text, at);
        if (c == U'\u2011' && face.glyph_of(c) == 0 && face.glyph_of(U'\u2010') == 0) {
            c = U'-';
        }
        hb_buffer_add(b, c, cluster);
    }
    if (draws_hyphen(stretch, face)) {
        hb_buffer_add(b, U'-', static_cast<unsigned>(stretch.end));
    }
    return buffer;
}

} // namespace

void shape(const Stretch& stretch, const Face& face, FaceId id, std::vector<ShapedGlyph>& glyphs) {
    const auto buffer = fill(stretch, face);
    hb_shape(face.data().font.get(), buffer.get(), nullptr, 0);
    unsigned count = 0;
    const auto* infos = hb_buffer_get_glyph_infos(buffer.get(), &count);
    const auto* positions = hb_buffer_get_glyph_positions(buffer.get(), &count);
    const double em = face.units_per_em();
    const auto text_end =
        static_cast<std::uint32_t>(stretch.end + (draws_hyphen(stretch, face) ? 1 : 0));
    std::uint32_t next_cluster = text_end;
    const auto first = glyphs.size();
    glyphs.resize(first + count);
    for (unsigned i = count; i-- > 0;) {
        const auto cluster = infos[i].cluster;
        const bool opens = i == 0 || infos[i - 1].cluster != cluster;
        const auto flags = hb_glyph_info_get_glyph_flags(&infos[i]);
        auto& shaped = glyphs[first + i];
        shaped.glyph = {
            infos[i].codepoint,         positions[i].x_advance / em,    positions[i].x_offset / em,
            positions[i].y_offset / em, opens ? cluster : next_cluster, next_cluster};
        shaped.face = id;
        shaped.cluster = cluster;
        shaped.is_safe = opens && (i == 0 || (flags & HB_GLYPH_FLAG_UNSAFE_TO_BREAK) == 0);
        if (opens) {
            next_cluster = cluster;
        }
    }
}

bool can_draw(const Face& face, char32_t character) {
    if (face.glyph_of(character) != 0) {
        return true;
    }
    if (character == U'\u2011') {
        return face.glyph_of(U'\u2010') != 0 || face.glyph_of(U'-') != 0;
    }
    return unicode::is_space(character) && face.glyph_of(U' ') != 0;
}

} // namespace thawslip::typeset

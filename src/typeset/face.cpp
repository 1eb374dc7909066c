#include "typeset/face.h"

#include "typeset/face_data.h"
#include "typeset/font_file.h"

#include <algorithm>
#include <array>
#include <filesystem>
#include <fmt/format.h>
#include <hb-ot.h>
#include <hb.h>

namespace thawslip::typeset {
namespace {

/// What may stand in a PDF name as it is: ISO 32000-1, 7.3.5, regular characters but for "#".
bool is_plain_name_character(char c) {
    return c > ' ' && c < 0x7F && std::string_view{"#%()/<>[]{}"}.find(c) == std::string_view::npos;
}

std::string postscript_name_of(hb_face_t* face, const std::string& path) {
    std::array<char, 128> buffer{};
    auto size = static_cast<unsigned>(buffer.size());
    hb_ot_name_get_utf8(face, HB_OT_NAME_ID_POSTSCRIPT_NAME, HB_LANGUAGE_INVALID, &size,
                        buffer.data());
    std::string name;
    for (const auto& candidate :
         {std::string{buffer.data()}, std::filesystem::path{path}.stem().string()}) {
        std::copy_if(candidate.begin(), candidate.end(), std::back_inserter(name),
                     is_plain_name_character);
        if (!name.empty()) {
            return name;
        }
    }
    return "Face";
}

/// The height of the ink of `character` above the baseline; where the face lacks it, what the
/// OS/2 table says. In font units.
double height_of(hb_font_t* font, char32_t character, hb_ot_metrics_tag_t tag) {
    hb_codepoint_t glyph = 0;
    hb_glyph_extents_t ink{};
    if (hb_font_get_nominal_glyph(font, character, &glyph) != 0 &&
        hb_font_get_glyph_extents(font, glyph, &ink) != 0 && ink.y_bearing > 0) {
        return ink.y_bearing;
    }
    hb_position_t claimed = 0;
    hb_ot_metrics_get_position_with_fallback(font, tag, &claimed);
    return claimed;
}

FaceMetrics measure(hb_font_t* font, int units_per_em) {
    hb_font_extents_t line{};
    hb_font_get_h_extents(font, &line);
    const double em = units_per_em;
    return {line.ascender / em, -line.descender / em,
            height_of(font, U'x', HB_OT_METRICS_TAG_X_HEIGHT) / em,
            height_of(font, U'H', HB_OT_METRICS_TAG_CAP_HEIGHT) / em};
}

/// Collects what HarfBuzz draws, font units turned into em.
struct Pen {
    std::vector<OutlinePiece>& pieces;
    double em;

    using Kind = OutlinePiece::Kind;
    void add(Kind kind, std::array<double, 2> x, std::array<double, 2> y) const {
        pieces.push_back({kind, {x[0] / em, x[1] / em}, {y[0] / em, y[1] / em}});
    }
};

using DrawFunctions = HbHandle<hb_draw_funcs_t, hb_draw_funcs_destroy>;
using Kind = OutlinePiece::Kind;

const Pen& pen_of(void* data) {
    return *static_cast<const Pen*>(data);
}

// HarfBuzz hands coordinates over in single precision: whole font units, which it holds exactly.
DrawFunctions make_draw_functions() {
    DrawFunctions functions{hb_draw_funcs_create()};
    auto* f = functions.get();
    hb_draw_funcs_set_move_to_func(
        f,
        [](hb_draw_funcs_t*, void* data, hb_draw_state_t*, float x, float y, void*) {
            pen_of(data).add(Kind::MoveTo, {x, 0}, {y, 0});
        },
        nullptr, nullptr);
    hb_draw_funcs_set_line_to_func(
        f,
        [](hb_draw_funcs_t*, void* data, hb_draw_state_t*, float x, float y, void*) {
            pen_of(data).add(Kind::LineTo, {x, 0}, {y, 0});
        },
        nullptr, nullptr);
    hb_draw_funcs_set_quadratic_to_func(
        f,
        [](hb_draw_funcs_t*, void* data, hb_draw_state_t*, float cx, float cy, float x, float y,
           void*) {
            pen_of(data).add(Kind::QuadraticTo, {cx, x}, {cy, y});
        },
        nullptr, nullptr);
    hb_draw_funcs_set_close_path_func(
        f,
        [](hb_draw_funcs_t*, void* data, hb_draw_state_t*, void*) {
            pen_of(data).add(Kind::Close, {}, {});
        },
        nullptr, nullptr);
    return functions;
}

} // namespace

Result<Face, std::string> Face::load(const std::string& path) {
    auto file = read_font_file(path);
    if (!file) {
        return Failure{path + ": " + file.fault()};
    }
    auto data = std::make_shared<Data>();
    data->path = path;
    data->bytes = std::move(file).value();
    const HbHandle<hb_blob_t, hb_blob_destroy> blob{
        hb_blob_create(data->bytes.data(), static_cast<unsigned>(data->bytes.size()),
                       HB_MEMORY_MODE_READONLY, nullptr, nullptr)};
    data->face.reset(hb_face_create(blob.get(), 0));
    if (const auto fault = fault_of_face(data->face.get()); !fault.empty()) {
        return Failure{path + ": " + fault};
    }
    hb_face_make_immutable(data->face.get());
    data->font.reset(hb_font_create(data->face.get()));
    hb_font_make_immutable(data->font.get());
    data->units_per_em = static_cast<int>(hb_face_get_upem(data->face.get()));
    data->postscript_name = postscript_name_of(data->face.get(), path);
    data->metrics = measure(data->font.get(), data->units_per_em);
    return Face{std::move(data)};
}

const std::string& Face::path() const {
    return data_->path;
}

std::string_view Face::bytes() const {
    return data_->bytes;
}

const std::string& Face::postscript_name() const {
    return data_->postscript_name;
}

int Face::units_per_em() const {
    return data_->units_per_em;
}

const FaceMetrics& Face::metrics() const {
    return data_->metrics;
}

std::uint32_t Face::glyph_of(char32_t character) const {
    hb_codepoint_t glyph = 0;
    return hb_font_get_nominal_glyph(data_->font.get(), character, &glyph) != 0 ? glyph : 0;
}

int Face::advance(std::uint32_t glyph) const {
    if (glyph >= hb_face_get_glyph_count(data_->face.get())) {
        return 0;
    }
    return hb_font_get_glyph_h_advance(data_->font.get(), glyph);
}

std::vector<OutlinePiece> Face::outline(std::uint32_t glyph) const {
    std::vector<OutlinePiece> pieces;
    Pen pen{pieces, static_cast<double>(data_->units_per_em)};
    const auto functions = make_draw_functions();
    hb_font_get_glyph_shape(data_->font.get(), glyph, functions.get(), &pen);
    return pieces;
}

} // namespace thawslip::typeset

#include "support/shipped_fonts.h"
#include "typeset/face.h"

#include <doctest/doctest.h>
#include <ft2build.h>
#include FT_FREETYPE_H
#include FT_TRUETYPE_TABLES_H

#include <memory>
#include <set>
#include <stdexcept>

using namespace thawslip::typeset;
using namespace thawslip::test_support;

namespace {

/// A font file in memory, as FreeType sees it.
class Raster {
public:
    explicit Raster(std::string bytes) : bytes_{std::move(bytes)} {
        if (FT_Init_FreeType(&library_) != 0 ||
            FT_New_Memory_Face(library_, reinterpret_cast<const FT_Byte*>(bytes_.data()),
                               static_cast<FT_Long>(bytes_.size()), 0, &face_) != 0) {
            throw std::runtime_error{"FreeType does not open the font"};
        }
        FT_Set_Pixel_Sizes(face_, 0, 64);
    }
    ~Raster() {
        FT_Done_Face(face_);
        FT_Done_FreeType(library_);
    }
    Raster(const Raster&) = delete;
    Raster& operator=(const Raster&) = delete;

    /// The glyph's ink at 64 px an em, with its place before it.
    std::string ink(std::uint32_t glyph) const {
        if (FT_Load_Glyph(face_, glyph, FT_LOAD_NO_HINTING | FT_LOAD_RENDER) != 0) {
            return "not loaded";
        }
        const auto* slot = face_->glyph;
        std::string ink = std::to_string(slot->bitmap_left) + "," +
                          std::to_string(slot->bitmap_top) + "," + std::to_string(slot->advance.x) +
                          ":";
        const auto row_bytes = static_cast<std::size_t>(slot->bitmap.pitch);
        ink.append(reinterpret_cast<const char*>(slot->bitmap.buffer),
                   row_bytes * slot->bitmap.rows);
        return ink;
    }
    long glyph_count() const { return face_->num_glyphs; }
    std::set<std::string> tables() const {
        std::set<std::string> names;
        FT_ULong count = 0;
        FT_Sfnt_Table_Info(face_, 0, nullptr, &count);
        for (FT_UInt i = 0; i < count; ++i) {
            FT_ULong tag = 0;
            FT_ULong length = 0;
            FT_Sfnt_Table_Info(face_, i, &tag, &length);
            names.insert({static_cast<char>(tag >> 24U), static_cast<char>(tag >> 16U),
                          static_cast<char>(tag >> 8U), static_cast<char>(tag)});
        }
        return names;
    }

private:
    std::string bytes_;
    FT_Library library_ = nullptr;
    FT_Face face_ = nullptr;
};

std::vector<std::uint32_t> glyphs_of(const Face& face, std::u32string_view text) {
    std::vector<std::uint32_t> glyphs;
    for (const char32_t c : text) {
        REQUIRE(face.glyph_of(c) != 0);
        glyphs.push_back(face.glyph_of(c));
    }
    return glyphs;
}

std::string file(const std::string& path) {
    std::unique_ptr<std::FILE, int (*)(std::FILE*)> f{std::fopen(path.c_str(), "rb"), &std::fclose};
    std::string bytes;
    for (int c = 0; (c = std::fgetc(f.get())) != EOF;) {
        bytes.push_back(static_cast<char>(c));
    }
    return bytes;
}

} // namespace

TEST_CASE(
    "every glyph of a subset looks as it did in the whole face, composites of composites too") {
    // In DejaVu Sans "ǻ" is a ring and an acute on an a, the ring-acute pair itself composite;
    // "š" of DejaVu Sans Bold and "⅕" are nested as well.
    const struct {
        std::string path;
        std::u32string text;
    } cases[] = {
        {dejavu + ".ttf", U"ǻǼž½⅓⅕℃✓☐Ωжa"},
        {dejavu + "-Bold.ttf", U"šŠǻeé"},
        {clear_sans + "Regular.ttf", U"éåŠčπжЙ½°ﬁz"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.path);
        const auto face = face_from(c.path);
        const auto glyphs = glyphs_of(face, c.text);
        const auto subset = face.subset(glyphs);
        REQUIRE(subset);
        const Raster before{file(c.path)};
        const Raster after{subset.value().bytes};
        REQUIRE(subset.value().new_ids.size() == glyphs.size());
        for (std::size_t i = 0; i < glyphs.size(); ++i) {
            CAPTURE(static_cast<std::uint32_t>(c.text[i]));
            const auto ink = before.ink(glyphs[i]);
            CHECK(ink.size() > 100);
            CHECK(after.ink(subset.value().new_ids[i]) == ink);
        }
        CHECK(after.ink(0) == before.ink(0));
    }
}

TEST_CASE("a subset holds what draws glyphs and nothing else") {
    const auto face = face_from(clear_sans + "Regular.ttf");
    const auto subset = face.subset(glyphs_of(face, U"Squash stew"));
    REQUIRE(subset);
    const Raster raster{subset.value().bytes};
    CHECK(raster.tables() == std::set<std::string>{"glyf", "head", "hhea", "hmtx", "loca", "maxp"});
    CHECK(raster.glyph_count() == 11); // .notdef, a space and nine letters
    CHECK(subset.value().bytes.size() < 4000);
}

TEST_CASE("the same glyphs give the same bytes, whatever order and however often they are named") {
    const auto face = face_from(clear_sans + "Regular.ttf");
    const auto once = face.subset(glyphs_of(face, U"apple"));
    const auto again = face_from(clear_sans + "Regular.ttf").subset(glyphs_of(face, U"eeallp"));
    REQUIRE(once);
    REQUIRE(again);
    CHECK(once.value().bytes == again.value().bytes);
    CHECK(once.value().new_ids[1] == once.value().new_ids[2]);
    CHECK(once.value().new_ids[0] == again.value().new_ids[2]);
}

TEST_CASE("a subset of nothing is .notdef alone, and an unknown glyph is refused") {
    const auto face = face_from(clear_sans + "Regular.ttf");
    const auto nothing = face.subset({});
    REQUIRE(nothing);
    CHECK(Raster{nothing.value().bytes}.glyph_count() == 1);
    const std::uint32_t unknown[] = {65'000};
    const auto refused = face.subset(unknown);
    REQUIRE_FALSE(refused);
    CHECK(refused.fault().find("has no glyph 65000, only ") != std::string::npos);
}

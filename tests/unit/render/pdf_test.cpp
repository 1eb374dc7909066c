#include "layout/sheets/pen.h"
#include "render/ink.h"
#include "render/pdf.h"
#include "support/shipped_fonts.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <limits>
#include <malloc.h>
#include <set>
#include <sstream>
#include <stdexcept>
#include <tuple>
#include <utility>

namespace pdf_test {

using namespace thawslip;
using namespace thawslip::literals;

namespace {

using test_support::shipped_fonts;

layout::Frame label(const typeset::FontSet& fonts, const std::string& words) {
    layout::Frame frame;
    frame.sheet = {4_in, 2_in};
    layout::Pen pen{frame, fonts};
    pen.write(words, {12_pt, 30_pt}, {12_pt, typeset::Weight::Bold});
    pen.write("Add ½ l stock; to 74 °C", {12_pt, 50_pt}, {7_pt});
    frame.items.push_back(layout::Rule{{{12_pt, 60_pt}, {100_pt, 0.5_pt}}});
    return frame;
}

std::string write(const typeset::FontSet& fonts, int pages) {
    return render::pdf(
        std::vector<layout::Frame>(static_cast<std::size_t>(pages), label(fonts, "Plum compote")),
        fonts, {"Bag labels", "en", {}});
}

bool has(const std::string& bytes, const std::string& what) {
    return bytes.find(what) != std::string::npos;
}

int count(const std::string& text, const std::string& what) {
    int found = 0;
    for (auto at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) {
        ++found;
    }
    return found;
}

} // namespace

TEST_CASE("pages of the first one's size take the document's box, others have their own") {
    const auto fonts = shipped_fonts();
    const auto wide = label(fonts, "Plum compote");
    auto tall = wide;
    tall.sheet = {2_in, 4_in};
    const auto boxes = [&](const std::vector<layout::Frame>& frames) {
        return count(render::pdf(frames, fonts, {"Bag labels", "en", {}}), "/MediaBox");
    };
    CHECK(boxes({wide, wide, wide}) == 1);
    CHECK(boxes({wide, tall, tall}) == 3);
    CHECK(boxes({wide, wide, tall}) == 2);
    CHECK(boxes({tall, wide, wide}) == 3);
}

TEST_CASE("the same frames give the same bytes, other frames another identifier") {
    const auto fonts = shipped_fonts();
    const auto first = write(fonts, 3);
    CHECK(write(fonts, 3) == first);
    CHECK(write(shipped_fonts(), 3) == first);
    const auto identifier = [](const std::string& bytes) {
        const auto at = bytes.rfind("/ID [");
        REQUIRE(at != std::string::npos);
        return bytes.substr(at, bytes.find(']', at) - at);
    };
    CHECK(identifier(write(fonts, 2)) != identifier(first));
}

TEST_CASE("a file tells no date and no program unless asked") {
    const auto fonts = shipped_fonts();
    const auto plain = write(fonts, 1);
    CHECK_FALSE(has(plain, "Date"));
    CHECK_FALSE(has(plain, "Producer"));
    const auto time = std::chrono::sys_days{std::chrono::year{2026} / 10 / 17} +
                      std::chrono::hours{9} + std::chrono::seconds{5};
    const auto dated = render::pdf({label(fonts, "Plum compote")}, fonts, {"", "", time});
    // ISO 32000-1, 7.9.4 "Dates".
    CHECK(has(dated, "/CreationDate (D:20261017090005Z"));
    CHECK_FALSE(has(dated, "/Lang"));
}

TEST_CASE("a page leaves for the sink when it is added, in pieces that make up the file") {
    const auto fonts = shipped_fonts();
    std::string received;
    render::PdfWriter writer{fonts, {"Bag labels", "en", {}}, [&received](std::string_view piece) {
                                 received += piece;
                             }};
    const auto frame = label(fonts, "Plum compote");
    for (int page = 0; page < 3; ++page) {
        const auto before = received.size();
        writer.add(frame);
        CHECK(received.size() > before + 150);
    }
    render::PdfWriter moved{std::move(writer)};
    moved.finish();
    CHECK(received == write(fonts, 3));
}

TEST_CASE("what the sink throws comes out, wherever it throws") {
    const auto fonts = shipped_fonts();
    struct DiskFull {};
    int pieces = 0;
    for (int allowed = 0;; ++allowed) {
        REQUIRE(allowed < 1000);
        int left = allowed;
        const auto sink = [&left](std::string_view) {
            if (left-- == 0) {
                throw DiskFull{};
            }
        };
        try {
            render::PdfWriter writer{fonts, {"", "", {}}, sink};
            writer.add(label(fonts, "Plum compote"));
            writer.finish();
            break;
        } catch (const DiskFull&) {
            ++pieces;
        }
    }
    CHECK(pieces > 5);
}

TEST_CASE("a length that no sheet has is refused, and the writer lives on") {
    const auto fonts = shipped_fonts();
    std::string received;
    render::PdfWriter writer{
        fonts, {"", "", {}}, [&received](std::string_view piece) { received += piece; }};
    for (const double wild : {1e12, std::numeric_limits<double>::infinity(),
                              std::numeric_limits<double>::quiet_NaN()}) {
        auto frame = label(fonts, "Plum compote");
        frame.items.push_back(layout::Rule{{{Length::points(wild), 0_pt}, {1_pt, 1_pt}}});
        CHECK_THROWS_AS(writer.add(frame), std::domain_error);
    }
    writer.add(label(fonts, "Plum compote"));
    writer.finish();
    CHECK(has(received, "/Count 1"));
    CHECK(received.ends_with("%%EOF\n"));
}

TEST_CASE("pages hang from nodes of bounded breadth, however many there are") {
    const auto fonts = shipped_fonts();
    layout::Frame blank;
    blank.sheet = {4_in, 2_in};
    std::string received;
    render::PdfWriter writer{
        fonts, {"", "", {}}, [&received](std::string_view piece) { received += piece; }};
    constexpr int pages = 8'500; // libharu's arrays end at 8,191 elements
    for (int page = 0; page < pages; ++page) {
        writer.add(blank);
    }
    writer.finish();
    CHECK(has(received, "/Count " + std::to_string(pages)));
    CHECK(count(received, "/Type /Page\n") == pages);
    std::size_t longest = 0;
    for (auto at = received.find("/Kids ["); at != std::string::npos;
         at = received.find("/Kids [", at + 1)) {
        longest = std::max(longest, received.find(']', at) - at);
    }
    CHECK(longest < 3000);
}

TEST_CASE("memory hardly grows with pages: a page that was added is gone") {
    const auto in_use = [] {
        const auto info = ::mallinfo2();
        return info.uordblks + info.hblkhd;
    };
    const auto fonts = shipped_fonts();
    const auto frame = label(fonts, "Plum compote");
    std::size_t bytes = 0;
    render::PdfWriter writer{
        fonts, {"", "", {}}, [&bytes](std::string_view piece) { bytes += piece.size(); }};
    const auto add = [&](int pages) {
        for (int page = 0; page < pages; ++page) {
            writer.add(frame);
        }
        return in_use();
    };
    const auto before = add(100);
    const auto after = add(2000);
    CHECK(after < before + 2000 * 400);
    CHECK(bytes > 2000 * 250);
    writer.finish();
}

TEST_CASE("a face's box holds all of its ink, and is told in whole thousandths around it") {
    // ISO 32000-1, Table 122, FontBBox: what is cut off there a reader may not draw.
    const auto fonts = shipped_fonts();
    const auto& face = fonts.faces[0];
    for (const std::u32string text : {U"j", U"W", U"ÅQ", U"-", U"f"}) {
        layout::Text item;
        item.size = 9_pt;
        item.baseline = {12_pt, 30_pt};
        std::vector<std::uint32_t> glyphs{0};
        for (const char32_t c : text) {
            typeset::Glyph glyph;
            glyph.id = face.glyph_of(c);
            glyph.advance = 0.5;
            item.run.glyphs.push_back(glyph);
            glyphs.push_back(glyph.id);
        }
        layout::Frame frame;
        frame.sheet = {4_in, 2_in};
        frame.items = {item};
        const auto bytes = render::pdf({frame}, fonts, {"", "", {}});
        const auto at = bytes.find("/FontBBox [ ");
        REQUIRE(at != std::string::npos);
        std::istringstream numbers{bytes.substr(at + 12)};
        int left = 0, bottom = 0, right = 0, top = 0;
        numbers >> left >> bottom >> right >> top;
        const auto ink = render::box_around(face, glyphs);
        for (const auto& [told, least, most] :
             {std::tuple{left, ink.left * 1000 - 1, ink.left * 1000},
              {bottom, ink.bottom * 1000 - 1, ink.bottom * 1000},
              {right, ink.right * 1000, ink.right * 1000 + 1},
              {top, ink.top * 1000, ink.top * 1000 + 1}}) {
            CHECK(told >= least);
            CHECK(told <= most);
        }
    }
}

TEST_CASE("subsets of a face are told apart by six capitals, and equal ones are called alike") {
    // ISO 32000-1, 9.6.4 "Font Subsets".
    const auto fonts = shipped_fonts();
    const auto tags = [&fonts](const std::string& words) {
        const auto bytes = render::pdf({label(fonts, words)}, fonts, {"", "", {}});
        std::set<std::string> found;
        for (auto at = bytes.find("/BaseFont /"); at != std::string::npos;
             at = bytes.find("/BaseFont /", at + 1)) {
            found.insert(bytes.substr(at + 11, 7));
        }
        return found;
    };
    const auto plum = tags("Plum compote");
    CHECK(plum.size() == 2); // regular and bold
    for (const auto& tag : plum) {
        CAPTURE(tag);
        CHECK(tag.find_first_not_of("ABCDEFGHIJKLMNOPQRSTUVWXYZ") == 6);
        CHECK(tag[6] == '+');
    }
    CHECK(tags("compote Plum") == plum);
    CHECK(tags("Oat bread") != plum);
}

TEST_CASE("a file tells its dates in universal time, to the second") {
    // ISO 32000-1, 7.9.4 "Dates".
    const auto fonts = shipped_fonts();
    const auto dated = [&fonts](std::chrono::sys_seconds time) {
        const auto bytes = render::pdf({label(fonts, "Plum compote")}, fonts, {"", "de", time});
        CHECK(has(bytes, "/Lang (de)"));
        const auto at = bytes.find("/CreationDate (");
        REQUIRE(at != std::string::npos);
        const auto date = bytes.substr(at + 15, 17);
        CHECK(has(bytes, "/ModDate (" + date));
        return date;
    };
    using namespace std::chrono;
    CHECK(dated(sys_days{year{2026} / 1 / 1} - seconds{1}) == "D:20251231235959Z");
    CHECK(dated(sys_days{year{2026} / 11 / 30} + hours{13} + minutes{7} + seconds{9}) ==
          "D:20261130130709Z");
}

TEST_CASE("pages hang 64 to a node, each node counts its own, and the top counts all") {
    const auto fonts = shipped_fonts();
    layout::Frame blank;
    blank.sheet = {4_in, 2_in};
    for (const auto& [pages, counts] : {std::pair{63, std::vector{63, 63}},
                                        {64, {64, 64}},
                                        {65, {64, 1, 65}},
                                        {128, {64, 64, 128}}}) {
        const auto bytes =
            render::pdf(std::vector<layout::Frame>(static_cast<std::size_t>(pages), blank), fonts,
                        {"", "", {}});
        std::vector<int> told;
        for (auto at = bytes.find("/Count "); at != std::string::npos;
             at = bytes.find("/Count ", at + 1)) {
            told.push_back(std::stoi(bytes.substr(at + 7)));
        }
        CHECK(told == counts);
        CHECK(count(bytes, "/Type /Pages\n") == static_cast<int>(counts.size()));
    }
}

TEST_CASE("a glyph that its face does not have is an error that names the face") {
    const auto fonts = shipped_fonts();
    auto frame = label(fonts, "Plum compote");
    std::get<layout::Text>(frame.items.at(0)).run.glyphs.front().id = 65'000;
    try {
        render::pdf({frame}, fonts, {"", "", {}});
        FAIL("a PDF was made");
    } catch (const render::PdfError& error) {
        const std::string said = error.what();
        CHECK(said.starts_with("the PDF cannot be made: /"));
        CHECK(has(said, ".ttf: has no glyph 65000, only "));
    }
}

TEST_CASE("a sheet without words needs no face") {
    const auto fonts = shipped_fonts();
    layout::Frame blank;
    blank.sheet = {4_in, 2_in};
    const auto bytes = render::pdf({blank}, fonts, {"", "", {}});
    CHECK_FALSE(has(bytes, "/FontFile2"));
    CHECK(bytes.size() < 1500);
}

} // namespace pdf_test

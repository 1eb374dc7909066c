// Font files that are not as they should be, made out of one that is.

#include "support/face_files.h"
#include "support/shipped_fonts.h"
#include "typeset/face.h"

#include <cstdint>
#include <doctest/doctest.h>
#include <filesystem>
#include <map>

namespace font_file_test {

using namespace thawslip::typeset;
using namespace thawslip::test_support;

namespace {

std::uint32_t word_at(const std::string& bytes, std::size_t at) {
    std::uint32_t word = 0;
    for (std::size_t i = 0; i < 4; ++i) {
        word =
            word << 8U | (at + i < bytes.size() ? static_cast<unsigned char>(bytes[at + i]) : 0U);
    }
    return word;
}

void put_word(std::string& bytes, std::size_t at, std::uint32_t word) {
    for (std::size_t i = 0; i < 4; ++i) {
        bytes[at + i] = static_cast<char>(word >> (24U - 8U * i));
    }
}

/// A font file that is changed byte by byte, in its tables.
class FontBytes {
public:
    explicit FontBytes(const std::string& path) {
        bytes_ = read_file(path);
        const auto count = word_at(bytes_, 4) >> 16U;
        for (std::size_t i = 0; i < count; ++i) {
            const auto record = 12 + 16 * i;
            records_[bytes_.substr(record, 4)] = record;
        }
    }

    const std::map<std::string, std::size_t>& records() const { return records_; }
    std::size_t offset(const std::string& tag) const {
        return word_at(bytes_, records_.at(tag) + 8);
    }
    std::size_t length(const std::string& tag) const {
        return word_at(bytes_, records_.at(tag) + 12);
    }
    void set_length(const std::string& tag, std::size_t length) {
        put_word(bytes_, records_.at(tag) + 12, static_cast<std::uint32_t>(length));
    }
    void rename(const std::string& tag, const std::string& other) {
        bytes_.replace(records_.at(tag), 4, other);
        records_[other] = records_.at(tag);
        records_.erase(tag);
    }
    void flip(const std::string& tag, std::size_t at) {
        auto& byte = bytes_[offset(tag) + at];
        byte = static_cast<char>(byte ^ 1);
    }
    /// Sets two bytes of a table.
    void put(const std::string& tag, std::size_t at, unsigned value) {
        bytes_[offset(tag) + at] = static_cast<char>(value >> 8U);
        bytes_[offset(tag) + at + 1] = static_cast<char>(value);
    }
    /// OpenType 1.9, "Calculating checksums": the sum of a table's words, filled up with zeros; in
    /// `head` the sum over the file counts as zero.
    void seal(const std::string& tag) {
        const auto table = bytes_.substr(offset(tag), length(tag));
        std::uint32_t sum = 0;
        for (std::size_t at = 0; at < table.size(); at += 4) {
            sum += tag == "head" && at == 8 ? 0U : word_at(table, at);
        }
        put_word(bytes_, records_.at(tag) + 4, sum);
    }

    std::string begun_with(const std::string& signature) const {
        return signature + bytes_.substr(4);
    }
    const std::string& bytes() const { return bytes_; }

private:
    std::string bytes_;
    std::map<std::string, std::size_t> records_; ///< where each stands in the directory
};

const FontBytes& regular() {
    static const FontBytes font{clear_sans + "Regular.ttf"};
    return font;
}

/// What is wrong with a file of these bytes; nothing where a face is read.
std::string fault_of(const std::string& bytes) {
    const auto face = Face::load(face_file("font_file_test.ttf", bytes));
    return face ? "" : face.fault().substr(face.fault().find(": ") + 2);
}

} // namespace

TEST_CASE("a file is told by how it begins, in words that say what to bring instead") {
    const auto begun_with = [](const std::string& signature) {
        return fault_of(regular().begun_with(signature));
    };
    CHECK(begun_with(std::string{"\0\1\0\0", 4}).empty());
    CHECK(begun_with("true").empty());
    CHECK(begun_with("OTTO").starts_with("has PostScript (CFF) outlines"));
    CHECK(begun_with("ttcf").starts_with("is a collection of faces"));
    CHECK(begun_with("wOFF").starts_with("is packed for the web (WOFF);"));
    CHECK(begun_with("wOF2").starts_with("is packed for the web (WOFF2);"));
    CHECK(begun_with("plum") == "is not a TrueType font file");
}

TEST_CASE("a licence that forbids what a print does with a face is kept, others do not hinder") {
    // OpenType 1.9, OS/2, fsType: 2 restricted, 4 preview and print, 8 editable, 0x100 no
    // subsetting, 0x200 bitmaps only; where several of 2, 4 and 8 are set, the least holds.
    const struct {
        unsigned type;
        bool may_be_set;
    } cases[] = {{0x0000, true},  {0x0001, true},  {0x0002, false}, {0x0004, true},
                 {0x0006, true},  {0x0008, true},  {0x000A, true},  {0x0100, false},
                 {0x0104, false}, {0x0200, false}, {0x0300, false}, {0x0402, false}};
    for (const auto& [type, may_be_set] : cases) {
        CAPTURE(type);
        auto font = regular();
        font.put("OS/2", 8, type);
        font.seal("OS/2");
        const auto fault = fault_of(font.bytes());
        CHECK(fault.empty() == may_be_set);
        CHECK((may_be_set || fault.starts_with("forbids embedding in documents (OS/2 fsType is ")));
    }
    auto shortened = regular();
    shortened.put("OS/2", 8, 2);
    shortened.set_length("OS/2", 10);
    shortened.seal("OS/2");
    CHECK_FALSE(fault_of(shortened.bytes()).empty());
    shortened.set_length("OS/2", 9); // the licence is not in it
    shortened.seal("OS/2");
    CHECK(fault_of(shortened.bytes()).empty());
}

TEST_CASE("a face without one of the tables that draw it is refused by that table's name") {
    for (const std::string tag : {"head", "hhea", "hmtx", "maxp", "loca", "glyf", "cmap"}) {
        CAPTURE(tag);
        auto font = regular();
        font.rename(tag, "gone");
        font.seal("gone"); // that of `head` is made in another way
        CHECK(fault_of(font.bytes()) ==
              "is damaged: its table \"" + tag + "\" is missing or cut short");
    }
}

TEST_CASE("a face that maps no character, or has no glyph, is refused") {
    auto unmapped = regular();
    unmapped.put("cmap", 2, 0);
    unmapped.seal("cmap");
    CHECK(fault_of(unmapped.bytes()) == "is damaged: it maps no character to a glyph");
    auto empty = regular();
    empty.put("maxp", 4, 0);
    empty.seal("maxp");
    CHECK_FALSE(fault_of(empty.bytes()).empty());
}

TEST_CASE("a wrong byte is noticed at either end of every table") {
    for (const auto& font : {regular(), FontBytes{dejavu + "-Bold.ttf"}}) {
        for (const auto& [tag, record] : font.records()) {
            const auto last = font.length(tag) - 1;
            for (const std::size_t at : {std::size_t{0}, last - 2, last - 1, last}) {
                CAPTURE(tag);
                CAPTURE(at);
                auto wrong = font;
                wrong.flip(tag, at);
                CHECK(fault_of(wrong.bytes()) ==
                      "is damaged: its table \"" + tag + "\" does not add up to its checksum");
            }
        }
    }
    // The sum over the whole file is not part of what is summed; what stands around it is.
    for (const std::size_t at : {7U, 8U, 11U, 12U}) {
        CAPTURE(at);
        auto font = regular();
        font.flip("head", at);
        CHECK(fault_of(font.bytes()).empty() == (at == 8 || at == 11));
    }
}

TEST_CASE("a table may end with the file, and not a byte behind it") {
    auto font = regular();
    std::string last;
    for (const auto& [tag, record] : font.records()) {
        last = last.empty() || font.offset(tag) > font.offset(last) ? tag : last;
    }
    const auto end = font.offset(last) + font.length(last);
    CHECK(fault_of(font.bytes().substr(0, end)).empty());
    const auto cut_short = "is damaged: its table \"" + last + "\" is cut short";
    CHECK(fault_of(font.bytes().substr(0, end - 1)) == cut_short);
    for (const std::string unprintable : {"abc\x1F", "\x7F~~~", "a\xC3\xB6 "}) {
        auto odd = font;
        odd.rename(last, unprintable);
        CHECK(fault_of(odd.bytes().substr(0, end - 1)) ==
              "is damaged: its table \"?\" is cut short");
    }
    font.rename(last, " ~a!");
    CHECK(fault_of(font.bytes().substr(0, end - 1)) ==
          "is damaged: its table \" ~a!\" is cut short");
    const auto directory = 12 + 16 * font.records().size();
    for (const std::size_t size :
         {std::size_t{4}, std::size_t{11}, std::size_t{12}, directory - 1}) {
        CAPTURE(size);
        CHECK(fault_of(font.bytes().substr(0, size)) == "is damaged: it is cut short");
    }
    CHECK(fault_of(font.bytes().substr(0, directory)).ends_with("is cut short"));
    CHECK(fault_of(font.bytes().substr(0, directory)).find("its table") != std::string::npos);
}

TEST_CASE("a file larger than any face is not read at all") {
    const auto path = face_file("huge.ttf", "");
    std::filesystem::resize_file(path, (64U << 20U) + 1);
    CHECK(Face::load(path).fault() == path + ": is larger than any face for text (over 64 MB)");
    std::filesystem::resize_file(path, 64U << 20U);
    CHECK(Face::load(path).fault() == path + ": is not a TrueType font file");
    std::filesystem::remove(path);
}

TEST_CASE("a face without a name is called as its file, and may stand in a PDF as it is") {
    // ISO 32000-1, 7.3.5 "Name Objects": regular characters from ! to ~ but the delimiters and #.
    auto font = regular();
    font.rename("name", "nam~");
    const auto name_of = [&font](const std::string& file) {
        const auto face = Face::load(face_file(file, font.bytes()));
        REQUIRE(face);
        return face.value().postscript_name();
    };
    CHECK(name_of("Plum (7) jam.ttf") == "Plum7jam");
    CHECK(name_of("!a#b%c<d>e[f]g{h}i~\x7Fé.ttf") == "!abcdefghi~");
    CHECK(name_of("(()).ttf") == "Face");
}

} // namespace font_file_test

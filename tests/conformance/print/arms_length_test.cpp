// Can a label be read by somebody who stands too far away, has no glasses on, or looks through
// frost? A general text reader looks at the sample day's labels through a blur: what it reads, a
// tired person does too.
//
// The reader is Tesseract (tesseract-ocr.github.io), as Debian has it, with the data for English;
// it knows nothing of labels. Of its page modes 4 (one column), 6 (one block) and 11 (words
// anywhere) the best counts for each fact. Limits are ours: no source.

#include "layout/files/stock_file.h"
#include "pages.h"
#include "support/blur.h"
#include "support/skip.h"

#include <algorithm>
#include <cctype>
#include <doctest/doctest.h>
#include <fmt/format.h>
#include <sstream>

namespace arms_length_test {

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

const std::string source = THAWSLIP_SOURCE_DIR;

constexpr int dots_per_inch = 200;
constexpr int labels_looked_at = 10; // the first sheet of 4 × 2 in

/// What a label of the sample day says.
struct Label {
    std::string dish;
    std::string date;
    std::string servings;
    std::string thaw;
};

/// The labels of the first sheet, in order.
std::vector<Label> first_sheet() {
    const Label stew{"squash and red lentil stew", "17 dec 2026", "6", "46 h"};
    const Label pork{"apple and sage pork shoulder", "28 feb 2027", "8", "74 h"};
    const Label soup{"chestnut kale and barley soup", "17 dec 2026", "4", "do not thaw"};
    const Label bake{"smoky bean and sausage bake", "17 nov 2026", "6", "3 h"};
    return {stew, stew, stew, pork, pork, soup, soup, soup, soup, bake};
}

/// The letters, small, and the digits of a text; how far apart they stand is not what is asked.
struct Squeezed {
    std::string letters;
    std::vector<bool> begins; ///< whether each has something else before it
};

Squeezed squeezed(const std::string& text) {
    Squeezed all;
    bool begins = true;
    for (const char c : text) {
        const auto letter = static_cast<unsigned char>(c);
        if (std::isalnum(letter) != 0) {
            all.letters += static_cast<char>(std::tolower(letter));
            all.begins.push_back(begins);
        }
        begins = std::isalnum(letter) == 0;
    }
    all.begins.push_back(true);
    return all;
}

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

/// Whether these words were read, a number whole.
bool says(const std::string& text, const std::string& words) {
    const auto [read, begins] = squeezed(text);
    const auto wanted = squeezed(words).letters;
    const auto is_cut = [&read = read, &begins = begins](std::size_t at) {
        return !begins[at] && is_digit(read[at]) && is_digit(read[at - 1]);
    };
    for (auto at = read.find(wanted); at != std::string::npos; at = read.find(wanted, at + 1)) {
        if (!is_cut(at) && !is_cut(at + wanted.size())) {
            return true;
        }
    }
    return false;
}

bool has_line(const std::string& text, const std::string& line) {
    std::istringstream lines{text};
    for (std::string read; std::getline(lines, read);) {
        if (squeezed(read).letters == squeezed(line).letters) {
            return true;
        }
    }
    return false;
}

/// Each of its words: between the lines of a name a reader may find others.
bool says_dish(const std::string& text, const Label& label) {
    std::istringstream words{label.dish};
    std::string word;
    bool all = true;
    while (words >> word) {
        all = all && says(text, word);
    }
    return all;
}

/// The numeral counts beside its word, in one line with the date, or alone in a line.
bool says_servings(const std::string& text, const Label& label) {
    return says(text, "serves " + label.servings) ||
           says(text, label.date + " " + label.servings) || has_line(text, label.servings);
}

/// What was read of a label.
struct Read {
    bool dish = false;
    bool date = false;
    bool servings = false;
    bool thaw = false;
};

Read read_in(const std::string& text, const Label& label) {
    return {says_dish(text, label), says(text, label.date), says_servings(text, label),
            says(text, label.thaw)};
}

/// The labels as pictures, blurred by so much on paper: the file of each.
std::vector<std::string> write_pictures(const Raster& sheet, const layout::Stock& stock,
                                        double millimetres, const ScratchFolder& folder) {
    const auto pixels = [](Length length) {
        return static_cast<int>(length.in_inches() * dots_per_inch);
    };
    std::vector<std::string> files;
    for (int i = 0; i < labels_looked_at; ++i) {
        const auto cell = stock.cell_at(i);
        const auto label = cropped(sheet, pixels(cell.left()), pixels(cell.top()),
                                   pixels(cell.size.width), pixels(cell.size.height));
        files.push_back(folder / (std::to_string(i) + ".pgm"));
        write_file(files.back(), to_pgm(blurred(label, millimetres / 25.4 * dots_per_inch)));
    }
    return files;
}

/// The text of each picture in one page mode.
std::vector<std::string> texts_of(const std::vector<std::string>& pictures, int mode,
                                  const ScratchFolder& folder) {
    const auto list = folder / "list";
    write_file(list, fmt::format("{}\n", fmt::join(pictures, "\n")));
    const auto read = run("OMP_THREAD_LIMIT=1 tesseract " + shell_word(list) + " - --dpi " +
                          std::to_string(dots_per_inch) + " --psm " + std::to_string(mode));
    std::vector<std::string> texts;
    std::istringstream pages{read.out};
    for (std::string page; std::getline(pages, page, '\f');) {
        texts.push_back(page);
    }
    texts.resize(pictures.size());
    return texts;
}

/// What was read in one mode or the other: each parts a label into columns and lines in its own
/// way, and one that keeps a name together may part a date.
Read either(const Read& a, const Read& b) {
    return {a.dish || b.dish, a.date || b.date, a.servings || b.servings, a.thaw || b.thaw};
}

bool is_whole(const Read& read) {
    return read.dish && read.date && read.servings && read.thaw;
}

/// What is read of each of the ten labels through a blur, in its best mode. Who has read all of a
/// label does not look again.
std::vector<Read> read_blurred(const Raster& sheet, const layout::Stock& stock,
                               double millimetres) {
    const ScratchFolder folder;
    const auto pictures = write_pictures(sheet, stock, millimetres, folder);
    const auto labels = first_sheet();
    std::vector<Read> best(labels.size());
    for (const int mode : {4, 6, 11}) {
        std::vector<std::size_t> left;
        std::vector<std::string> left_pictures;
        for (std::size_t i = 0; i < labels.size(); ++i) {
            if (!is_whole(best[i])) {
                left.push_back(i);
                left_pictures.push_back(pictures[i]);
            }
        }
        if (left.empty()) {
            break;
        }
        const auto texts = texts_of(left_pictures, mode, folder);
        for (std::size_t i = 0; i < left.size(); ++i) {
            best[left[i]] = either(best[left[i]], read_in(texts[i], labels[left[i]]));
        }
    }
    return best;
}

/// How many labels were read as far as somebody needs to know which bag to take, and to thaw it.
struct Counts {
    std::ptrdiff_t face = 0; ///< dish and limit date
    std::ptrdiff_t rest = 0; ///< servings and thaw hours
};

/// Counts them, and says what of each was not read.
Counts counted(const std::vector<Read>& all, double millimetres) {
    Counts counts;
    std::string missed;
    for (const auto& read : all) {
        counts.face += read.dish && read.date ? 1 : 0;
        counts.rest += read.servings && read.thaw ? 1 : 0;
        missed += std::string{" "} + (read.dish ? "" : "D") + (read.date ? "" : "d") +
                  (read.servings ? "" : "s") + (read.thaw ? "" : "t") + ".";
    }
    MESSAGE("through " << millimetres << " mm: dish and date of " << counts.face
                       << ", servings and thaw hours of " << counts.rest
                       << " of 10; not read (dish, date, servings, thaw):" << missed);
    return counts;
}

} // namespace

TEST_CASE("a text reader reads the labels of the sample day through a blur") {
    if (run("tesseract --version").status != 0) {
        skip("there is no tesseract");
        return;
    }
    const std::string name = "letter-2x5-4x2in";
    const auto stock = layout::load_stock(source + "/layouts/stock/" + name + ".toml").stock;
    REQUIRE(stock);
    const ScratchFolder folder;
    const auto pdf = folder / "labels.pdf";
    REQUIRE(run_thawslip("labels " + shell_word(source + "/samples/orchard-day.toml") +
                         " --stock " + name + " -o " + shell_word(pdf))
                .status == 0);
    const auto sheet = rasterise(pdf, 1, dots_per_inch);
    const auto read_through = [&](double millimetres) {
        return counted(read_blurred(sheet, *stock, millimetres), millimetres);
    };
    const auto sharp = read_through(0.10); // that the test can see at all
    const auto near = read_through(0.30);
    const auto far = read_through(0.40);
    CHECK(sharp.face == 10);
    CHECK(sharp.rest == 10);
    CHECK(near.face >= 9);
    CHECK(near.rest >= 9);
    CHECK(far.face >= 9);
}

} // namespace arms_length_test

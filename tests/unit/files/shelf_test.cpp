// What comes with the program, found in a folder of its own.

#include "base/system_failure.h"
#include "files/data_folder.h"
#include "files/input_file.h"
#include "files/shelf.h"
#include "support/command.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <filesystem>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

namespace fs = std::filesystem;

/// A folder with the layouts and the fonts of the sources, to be changed.
struct Shelf {
    ScratchFolder scratch;
    files::DataFolder data{scratch.path()};

    Shelf() {
        const auto all = fs::copy_options::recursive;
        fs::copy(THAWSLIP_SOURCE_DIR "/layouts", data.layouts(), all);
        fs::copy(THAWSLIP_SOURCE_DIR "/fonts", data.fonts(), all);
    }
    service::Surroundings around() const {
        return files::surroundings_in([this] { return data; });
    }
    std::vector<std::string> layouts(std::set<wording::Kind> kinds) const {
        std::vector<std::string> names;
        for (const auto& layout : around().layouts(kinds)) {
            names.push_back(fs::relative(layout.file, data.layouts()).string());
        }
        return names;
    }
};

} // namespace

TEST_CASE("what comes along is in a folder that has both stocks and faces") {
    const Shelf shelf;
    CHECK(files::is_data_folder(shelf.data.root));
    fs::rename(shelf.data.fonts() / "faces.toml", shelf.data.fonts() / "other.toml");
    CHECK_FALSE(files::is_data_folder(shelf.data.root));
    fs::rename(shelf.data.fonts() / "other.toml", shelf.data.fonts() / "faces.toml");
    fs::rename(shelf.data.stocks(), shelf.data.layouts() / "stocks");
    CHECK_FALSE(files::is_data_folder(shelf.data.root));
}

TEST_CASE("layouts are those of the folders of the kinds asked for, in the order of their names") {
    const Shelf shelf;
    for (const char* name : {"zz", "m", "aa", "k", "b", "y", "c", "x"}) {
        fs::copy(shelf.data.layouts() / "card/finishing-wide.toml",
                 shelf.data.layouts() / "card" / (std::string{name} + ".toml"));
    }
    write_file((shelf.data.layouts() / "card/notes.txt").string(), "no layout");
    const auto cards = shelf.layouts({wording::Kind::CookDayCard, wording::Kind::FinishingCard});
    CHECK(cards.size() == 12);
    CHECK(std::ranges::is_sorted(cards));
    CHECK(std::ranges::all_of(cards, [](const auto& name) { return name.starts_with("card/"); }));
    const auto more = shelf.layouts({wording::Kind::BagLabel, wording::Kind::PlanSheet});
    CHECK(std::ranges::count(more, "list/plan.toml") == 1);
    CHECK(std::ranges::count(more, "label/wide.toml") == 1);
    CHECK(std::ranges::none_of(more, [](const auto& name) { return name.starts_with("card/"); }));
}

TEST_CASE("a stock is found by its name, and one that is not there is none") {
    const Shelf shelf;
    const auto stock = shelf.around().stock("roll-4x6in");
    REQUIRE(stock);
    CHECK(stock->stock);
    CHECK_FALSE(shelf.around().stock("roll-4x7in"));
    CHECK(shelf.around().stocks().stocks.size() > 30);
}

TEST_CASE("a file is read up to 256 KiB and no further") {
    const Shelf shelf;
    const auto file = (shelf.data.root / "long.toml").string();
    write_file(file, std::string(std::size_t{1} << 18U, '#'));
    CHECK(shelf.around().own_file(file).ok());
    write_file(file, std::string((std::size_t{1} << 18U) + 1, '#'));
    const auto refused = shelf.around().own_file(file);
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.fault().message.find("262145") != std::string::npos);
}

TEST_CASE("faces are read from a file of at most 64 KiB, and what is wrong with it is said") {
    const Shelf shelf;
    const auto file = (shelf.data.fonts() / "faces.toml").string();
    const auto text = read_file(file);
    const auto padded = [&](std::size_t size) {
        return text + std::string(size - text.size(), '#');
    };
    write_file(file, padded(std::size_t{1} << 16U));
    CHECK(files::load_fonts(shelf.data).faces.size() > 2);
    write_file(file, padded((std::size_t{1} << 16U) + 1));
    CHECK_THROWS_AS(files::load_fonts(shelf.data), SystemFailure);
    write_file(file, text + "\nitalic = []\n");
    CHECK_THROWS_AS(files::load_fonts(shelf.data), SystemFailure);
    write_file(file, "regular = [\"no-such/Face.ttf\"]\n");
    CHECK_THROWS_AS(files::load_fonts(shelf.data), SystemFailure);
    fs::remove(file);
    CHECK_THROWS_AS(files::load_fonts(shelf.data), SystemFailure);
}

// What comes with the program, found in a folder of its own.

#include "base/system_failure.h"
#include "files/data_folder.h"
#include "files/input_file.h"
#include "files/shelf.h"
#include "support/as_nobody.h"
#include "support/command.h"
#include "support/skip.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <filesystem>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

namespace fs = std::filesystem;

/// What a system failure says; empty where the work is done.
template <class Work>
std::string failure_of(const Work& work) {
    try {
        work();
    } catch (const SystemFailure& failure) {
        return failure.what();
    }
    return {};
}

bool says(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

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

TEST_CASE("a face that is no font, or not there, is named with the package that brings it") {
    const Shelf shelf;
    const auto failure_with = [&](const std::string& file) {
        write_file((shelf.data.fonts() / "faces.toml").string(),
                   "regular = [\"" + file + "\"]\nmedium = []\nbold = []\n");
        return failure_of([&] { files::load_fonts(shelf.data); });
    };
    const auto none = [](const std::string& file, const std::string& hint) {
        return "the font file " + file + " is not installed" + hint;
    };
    CHECK(failure_with("clear-sans/None.ttf") ==
          none("clear-sans/None.ttf", "; on Debian: apt-get install fonts-clear-sans"));
    CHECK(failure_with("dejavu/None.ttf") ==
          none("dejavu/None.ttf", "; on Debian: apt-get install fonts-dejavu-core"));
    CHECK(failure_with("orchard/None.ttf") == none("orchard/None.ttf", ""));
    // What lies beside it is taken before the system's of the same name.
    fs::create_directory(shelf.data.fonts() / "dejavu");
    const auto own = (shelf.data.fonts() / "dejavu/DejaVuSans.ttf").string();
    write_file(own, "no font");
    CHECK(says(failure_with("dejavu/DejaVuSans.ttf"), own));
    fs::remove(own);
    fs::create_directory(own); // a folder is no face
    CHECK_FALSE(says(failure_with("dejavu/DejaVuSans.ttf"), own));
}

TEST_CASE("a character is looked for in up to sixteen faces") {
    const Shelf shelf;
    const auto failure_with = [&](int count) {
        std::string chain;
        for (int i = 0; i < count; ++i) {
            chain += "\"dejavu/DejaVuSans.ttf\", ";
        }
        std::string text;
        for (const std::string weight : {"regular", "medium", "bold"}) {
            text += weight + " = [" + chain + "]\n";
        }
        write_file((shelf.data.fonts() / "faces.toml").string(), text);
        return failure_of([&] { files::load_fonts(shelf.data); });
    };
    CHECK(failure_with(16).empty());
    CHECK(says(failure_with(17), "faces.toml:1"));
    CHECK_FALSE(failure_with(0).empty()); // a weight without any face
}

TEST_CASE("a layout that came along and cannot be read is a failure, up to 256 KiB it is none") {
    const Shelf shelf;
    const auto file = shelf.data.layouts() / "label/zz.toml";
    const auto failure = [&] {
        return failure_of([&] { shelf.around().layouts({wording::Kind::BagLabel}); });
    };
    write_file(file.string(), std::string(std::size_t{1} << 18U, '#'));
    CHECK(failure().empty());
    write_file(file.string(), std::string((std::size_t{1} << 18U) + 1, '#'));
    CHECK(says(failure(), file.string()));
    fs::remove(file);
    fs::create_symlink("nowhere.toml", file);
    CHECK(says(failure(), file.string()));
    CHECK(says(failure(), "there is no such file"));
    // Of other kinds nobody asks for it.
    CHECK(failure_of([&] { shelf.around().layouts({wording::Kind::PlanSheet}); }).empty());
}

TEST_CASE("what the cook named wrongly is told, and what the system forbids is a failure") {
    const Shelf shelf;
    const auto told = [&](const std::string& file) {
        const auto read = files::read_input(file, 10);
        return read ? "read: " + read.value() : read.fault().message;
    };
    const auto at = [&](const char* name) { return (shelf.data.root / name).string(); };
    write_file(at("ten.toml"), "0123456789");
    CHECK(told(at("ten.toml")) == "read: 0123456789");
    CHECK(told(at("none.toml")) == "there is no such file");
    CHECK(told(at("ten.toml/inside")) == "there is no such file");
    CHECK(told(at("layouts")) == "this is a folder, not a file");
    CHECK(told("/dev/null") == "this is a device or a pipe, not an ordinary file");
    // Its own link: no file system follows it (POSIX.1-2017, open(), ELOOP).
    fs::create_symlink("round.toml", at("round.toml"));
    CHECK(failure_of([&] {
              told(at("round.toml"));
          }).starts_with(at("round.toml") + ": cannot be read: "));
    fs::permissions(shelf.data.root, fs::perms::owner_all | fs::perms::others_exec);
    fs::permissions(at("ten.toml"), fs::perms::none);
    {
        const AsNobody nobody;
        if (!nobody.worked()) {
            skip("nobody cannot be forbidden anything here");
            return;
        }
        CHECK(failure_of([&] { told(at("ten.toml")); }) ==
              at("ten.toml") + ": you are not permitted to read this file");
    }
}

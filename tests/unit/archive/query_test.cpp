// How what is in the archive is found again: bags in order, ids by their slips, prints by their
// days, and the sheet that was last begun.

#include "samples.h"
#include "support/command.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <iterator>
#include <utility>

namespace query_test {

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

std::string shell(const std::string& path, const std::string& sql) {
    return run("sqlite3 " + shell_word(path) + " " + shell_word(sql)).out;
}

const PackageRecord stew = package("Squash and red lentil stew", 3);
const PackageRecord soup = package("Chestnut and kale soup", 2, date(2026, 11, 1));

std::vector<std::string> ids_of(const std::vector<Bag>& bags) {
    std::vector<std::string> ids;
    std::ranges::transform(bags, std::back_inserter(ids), &Bag::id);
    return ids;
}

std::vector<std::string> in_order(std::vector<std::string> ids,
                                  const std::vector<std::string>& more) {
    ids.insert(ids.end(), more.begin(), more.end());
    return ids;
}

std::string symbols_of(std::string id) {
    std::erase(id, '-');
    return id;
}

bool finds(Archive& archive, const std::string& typed, const std::string& id) {
    return std::ranges::count(archive.near_ids(typed), id) == 1;
}

char another(char symbol) {
    return symbol == '7' ? '8' : '7';
}

/// Every slip that a hand makes leads back to the id.
void check_slips(Archive& archive, const std::string& id) {
    CAPTURE(id);
    const auto right = symbols_of(id);
    CHECK(finds(archive, right, id));
    for (std::size_t at = 0; at < right.size(); ++at) {
        CAPTURE(at);
        auto wrong = right;
        wrong[at] = another(right[at]);
        CHECK(finds(archive, wrong, id));
        CHECK(finds(archive, std::string{right}.erase(at, 1), id));
        CHECK(finds(archive, std::string{right}.insert(at, "7"), id));
        if (at > 0) {
            auto swapped = right;
            std::swap(swapped[at - 1], swapped[at]);
            CHECK(finds(archive, swapped, id));
        }
    }
    CHECK(finds(archive, right + "7", id));
}

PrintRecord print_of(const char* what, const DayRecord& day, const std::string& at) {
    auto record = print({day}, at);
    record.setup.what = what;
    return record;
}

} // namespace

TEST_CASE("bags are listed by date, then by name, then as printed, each dish's by number") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    const auto apples = package("Apple turnovers", 2);
    archive.record(print({day({stew, soup, apples})}));
    // A second pot of the stew, from another file.
    auto second = day({stew}, "/barn/saturday.toml");
    second.description += "# barn\n";
    const WhichBatch another_pot{WhichBatch::Kind::New};
    second = with_ids(second, archive.settle(second, another_pot).batches);
    auto made = print({second}, "2026-10-17T16:00:00");
    made.which = another_pot;
    archive.record(made);
    const auto expected =
        in_order(in_order(in_order(soup.bags, apples.bags), stew.bags), second.packages[0].bags);
    CHECK(ids_of(archive.bags(Which::All)) == expected);
    CHECK(ids_of(archive.find("stew", Which::All)) == in_order(stew.bags, second.packages[0].bags));
    // As another archive has them in whatever order.
    auto contents = archive.contents();
    std::ranges::reverse(contents.bags);
    auto other = opened(scratch.folder / "other.db");
    other.merge(contents);
    CHECK(ids_of(other.bags(Which::All)) == expected);
    const auto key = archive.bag(stew.bags[0])->day;
    CHECK(ids_of(archive.bags_of(key)) == in_order(in_order(stew.bags, soup.bags), apples.bags));
}

TEST_CASE("only what is in the freezer is found there, and what was renamed nowhere") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    const auto before = package("Apple turnovers", 1);
    archive.record(print({day({before, soup})}));
    archive.record(print({day({package("Orchard turnovers", 1)}, "/orchard/renamed.toml")}));
    const auto now = package("Orchard turnovers", 1).bags;
    archive.set_state(std::vector{soup.bags[0]}, State::Out, "2026-10-18T10:00:00");
    archive.join(std::vector{std::pair{before.bags[0], now[0]}}, "2026-10-19T10:00:00");
    CHECK(ids_of(archive.bags(Which::InFreezer)) == in_order({soup.bags[1]}, now));
    CHECK(ids_of(archive.bags(Which::All)) == in_order(soup.bags, now));
    CHECK(ids_of(archive.find("soup", Which::InFreezer)) == std::vector{soup.bags[1]});
    CHECK(ids_of(archive.find("soup", Which::All)) == soup.bags);
    CHECK(archive.find("apple", Which::InFreezer).empty());
    CHECK_FALSE(archive.bag("K7Q-2M4-9XC").has_value());
    // Words are parted by whatever is no letter and no digit, and the first and last letters count.
    CHECK(archive.find("che-kal/AND", Which::All).size() == 2);
    CHECK(archive.find("zz", Which::All).empty());
}

TEST_CASE("a word is letters and digits, from the first to the last of them") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    const auto odd = package("azAZ09é pot", 1);
    archive.record(print({day({odd, soup})}));
    for (const char* words :
         {"aza", "azAZ09é", "pot az", "po@az", "po[az", "po`az", "po{az", "po/az", "po:az"}) {
        CAPTURE(words);
        CHECK(archive.find(words, Which::All).size() == 1);
    }
    for (const char* words : {"z", "Z09", "09", "é"}) {
        CAPTURE(words);
        CHECK(archive.find(words, Which::All).empty());
    }
}

TEST_CASE("an id is found by each slip of a hand at each place, and not by two") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    const auto many = package("Apple turnovers", 12);
    auto numbered = day({stew}, "/orchard/numbered.toml");
    numbered.packages[0].batch.kitchen_number = 777;
    numbered = with_ids(numbered, archive.settle(numbered, {}).batches);
    archive.record(print({day({many})}));
    archive.record(print({numbered}));
    for (const auto& id : many.bags) {
        check_slips(archive, id);
    }
    check_slips(archive, numbered.packages[0].bags[0]);
    auto twice = symbols_of(many.bags[0]);
    twice[1] = another(twice[1]);
    twice[6] = another(twice[6]);
    CHECK_FALSE(finds(archive, twice, many.bags[0]));
    // Without the kitchen's symbols it must be whole.
    const auto whole = symbols_of(numbered.packages[0].bags[0]).substr(3);
    CHECK(finds(archive, whole, numbered.packages[0].bags[0]));
    CHECK_FALSE(finds(archive, whole.substr(1), numbered.packages[0].bags[0]));
}

TEST_CASE("prints are found by each day on which they were made, and by what they are of") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    const auto of = day({stew, soup});
    archive.record(print_of("labels", of, "2026-10-17T00:00:00"));
    archive.record(print_of("cards", of, "2026-10-18T23:59:59"));
    archive.record(print_of("labels", of, "2026-10-19T09:00:00"));
    const auto key = archive.bag(stew.bags[0])->day;
    const auto prints = archive.prints_of(key);
    REQUIRE(prints.size() == 2);
    CHECK(prints[0].setup.what == "cards"); // the newest first
    CHECK(prints[0].times == 1);
    CHECK(prints[1].first_at == "2026-10-17T00:00:00");
    CHECK(prints[1].last_at == "2026-10-19T09:00:00");
    CHECK(prints[1].times == 2);
    CHECK(prints[1].days == std::vector{key});
    CHECK(prints[1].setup == print_of("labels", of, "").setup);
    CHECK(archive.newest_setup(key)->what == "cards");
    CHECK(archive.newest_setup(key)->look == "face 1\n");
    const auto on = [&archive](unsigned day) { return archive.prints_on(date(2026, 10, day)); };
    CHECK(on(16).empty());
    REQUIRE(on(17).size() == 1);
    CHECK(on(17)[0].setup.what == "labels");
    REQUIRE(on(18).size() == 1);
    CHECK(on(18)[0].setup.what == "cards");
    REQUIRE(on(19).size() == 1);
    CHECK(on(19)[0].times == 2);
    CHECK(on(20).empty());
    const std::vector<std::pair<kitchen::Date, std::string>> days = {
        {date(2026, 10, 17), "labels"},
        {date(2026, 10, 18), "cards"},
        {date(2026, 10, 19), "labels"}};
    CHECK(archive.days_printed() == days);
    archive.record(print_of("lists", of, "2026-10-17T10:00:00"));
    REQUIRE(on(17).size() == 2);
    CHECK(on(17)[1].setup.what == "lists"); // in the order recorded
}

TEST_CASE("a description is told with all that was recorded of it, and none that is not there") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    const auto first = day({stew, soup});
    archive.record(print({first}, "2026-10-17T14:05:00"));
    auto edited = first;
    edited.description += "# edited\n";
    archive.record(print({edited}, "2026-10-18T09:00:00"));
    archive.record(print({day({package("Plum compote", 1)}, "/barn/plums.toml")}));
    const auto days = archive.days();
    REQUIRE(days.size() == 3);
    const auto told = archive.day(days[1].key);
    CHECK(told.lineage == days[0].lineage);
    CHECK(told.lineage != days[2].lineage);
    CHECK(told.revision == 2);
    CHECK(told.made == date(2026, 10, 17));
    CHECK(told.kitchen == "Orchard house");
    CHECK(told.file == "/orchard/saturday.toml");
    CHECK(told.recorded == "2026-10-18T09:00:00");
    CHECK(told.description == edited.description);
    CHECK(told.batches == std::vector<kitchen::Batch>(2));
    CHECK_FALSE(told.is_rotten);
    CHECK_FALSE(archive.first_rotten_day().has_value());
    CHECK(archive.day(DayKey{99}).description.empty());
    CHECK(archive.revisions(99).empty());
    shell(scratch.path, "UPDATE day SET description = 'another' WHERE id > 1");
    CHECK(archive.day(days[1].key).is_rotten);
    CHECK_FALSE(archive.day(days[0].key).is_rotten);
    REQUIRE(archive.first_rotten_day().has_value());
    CHECK(archive.first_rotten_day()->key == days[1].key);
    CHECK(archive.packages(days[1].key).size() == 2);
}

TEST_CASE("where a sheet was left is known by its stock, and what cannot be a cell is left out") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    CHECK_FALSE(archive.used_sheet("letter-2x5-4x2in").has_value());
    const UsedSheet sheet{"letter-2x5-4x2in", 3, {5, 9, 10}, "2026-10-17T14:05:00"};
    const UsedSheet other{"a4-2x4-99x68mm", 1, {}, "2026-10-17T14:06:00"};
    archive.use_sheet(sheet);
    archive.use_sheet(other);
    CHECK(archive.used_sheet(sheet.stock) == sheet);
    CHECK(archive.used_sheet(other.stock) == other);
    auto later = sheet;
    later.next_cell = 7;
    later.skipped = {9};
    later.at = "2026-10-18T09:00:00";
    auto printed = print({day({stew})});
    printed.sheet = later;
    archive.record(printed);
    CHECK(archive.used_sheet(sheet.stock) == later);
    CHECK(archive.used_sheet(other.stock) == other);
    const auto cells_of = [&](const std::string& text) {
        shell(scratch.path, "UPDATE sheet SET skipped = '" + text + "'");
        return archive.used_sheet(sheet.stock)->skipped;
    };
    CHECK(cells_of("1 10000") == std::vector{1, 10'000});
    CHECK(cells_of("0 4 10001 -3 5") == std::vector{4, 5});
    CHECK(cells_of("x 4y 99999999999 5 ") == std::vector{4, 5});
    const auto next = [&](int cell) {
        shell(scratch.path, "UPDATE sheet SET next_cell = " + std::to_string(cell));
        const auto used = archive.used_sheet(sheet.stock);
        return used ? used->next_cell : 0;
    };
    CHECK(next(0) == 0);
    CHECK(next(1) == 1);
    CHECK(next(10'000) == 10'000);
    CHECK(next(10'001) == 0);
}

TEST_CASE("of which server a file is a copy is known, the last that was said") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    CHECK_FALSE(archive.link().has_value());
    const Link first{"postgresql://store/cold", "2026-11-01T18:02:00", 1'793'555'000};
    const Link second{"postgresql://barn/cold", "", 1'793'556'000};
    archive.put_link(first);
    CHECK(archive.link() == first);
    archive.put_link(second);
    CHECK(archive.link() == second);
}

} // namespace query_test

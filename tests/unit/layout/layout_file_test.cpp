// What is wrong with a layout file, told at its place and with what to write instead; and prints
// that a layout has no place for.

#include "labels.h"
#include "layout/compose.h"
#include "stocks.h"
#include "wording/print_fields.h"

namespace layout_file_test {

using namespace thawslip;
using namespace thawslip::layout;

namespace {

/// A layout of `print` with these areas, one below the other; what each says stands on one line.
std::string drawn(const std::string& print, const std::vector<std::string>& areas) {
    std::string picture;
    std::string said;
    for (const auto& area : areas) {
        picture += "\"" + area.substr(0, area.find(' ')) + "\", ";
        said += area + "\n";
    }
    return "print = \"" + print + "\"\npicture = [" + picture + "]\n[area]\n" + said;
}

std::string area(const std::string& name, const std::string& words, const std::string& more = "") {
    return name + " = { words = [" + words + "], x_height = [\"1.2 mm\", \"1.3 mm\", \"1.4 mm\"]" +
           more + " }";
}

Diagnostics faults_of(const std::string& text) {
    Diagnostics faults;
    const auto document = toml::parse(text, "mine.toml", faults);
    const bool is_read = read_layout(document, "mine", faults).has_value();
    CHECK(is_read == !has_errors(faults));
    return faults;
}

struct PrintKind {
    std::string name;
    wording::Kind kind;
};

const PrintKind kinds[] = {{"bag label", wording::Kind::BagLabel},
                           {"finishing card", wording::Kind::FinishingCard},
                           {"cook-day card", wording::Kind::CookDayCard},
                           {"door list", wording::Kind::DoorList},
                           {"day sheet", wording::Kind::DaySheet}};

std::vector<std::string> always(wording::Kind kind) {
    std::vector<std::string> names;
    for (const auto& field : wording::fields_of(kind)) {
        if (field.stays == wording::Stays::Always) {
            names.push_back(field.name);
        }
    }
    return names;
}

bool is_said_by_others(wording::Kind kind, const std::string& name) {
    const auto fields = wording::fields_of(kind);
    const auto field = std::ranges::find(fields, name, &wording::FieldOfKind::name);
    return field != fields.end() && !field->said_by.empty();
}

/// What `fit` has against a print of `kind` that says every field, laid out without `lacking`.
std::vector<Fault> faults_without(const PrintKind& kind, const std::string& lacking) {
    std::vector<std::string> areas;
    wording::Print print;
    print.kind = kind.kind;
    for (const auto& name : always(kind.kind)) {
        print.fields.push_back(testing::field(name, {"x"}));
        if (name != lacking) {
            areas.push_back(area(name, "\"" + name + "\""));
        }
    }
    Medium medium;
    medium.stock = ten_labels();
    medium.stock.rows = 1;
    medium.stock.cell.height = medium.stock.pitch.height =
        Length::millimetres(100); // room for every field
    const Source source{1, [&](std::size_t) { return print; }, {}};
    const Layouts layouts{{kind.kind, testing::layout_from(drawn(kind.name, areas))}};
    auto fitting = fit(source, layouts, medium, testing::fonts());
    return fitting ? std::vector<Fault>{} : fitting.fault();
}

/// A layout with one mistake, and how that is told: message and hint as far as they are given.
struct Wrong {
    std::string text;
    std::uint32_t line;
    std::uint32_t column;
    std::string message;
    std::string hint;
};

void check(const std::vector<Wrong>& layouts) {
    for (const auto& c : layouts) {
        CAPTURE(c.text);
        const auto faults = faults_of(c.text);
        REQUIRE(faults.size() == 1);
        CHECK(faults[0].where.line == c.line);
        CHECK(faults[0].where.column == c.column);
        CHECK(faults[0].message.substr(0, c.message.size()) == c.message);
        CHECK((c.hint.empty() || faults[0].hints.at(0).substr(0, c.hint.size()) == c.hint));
    }
}

} // namespace

TEST_CASE("what is wrong with a layout is told at its place, with what to write instead") {
    check({
        {drawn("bag label", {area("dish", "\"dish\", \"serving\"")}), 4, 27,
         "\"serving\" is not a field of a bag label", "did you mean \"servings\"?"},
        {drawn("bag label", {area("dish", "\"dish\""), area("when", "\"timeline\"")}), 5, 19,
         "\"timeline\" is not a field of a bag label", "did you mean \""},
        {drawn("bag label", {area("dish", "\"dish\""), "one = { kind = \"code\" }",
                             "two = { kind = \"code\" }"}),
         6, 16, "\"two\" would be a second code, and a print has one: \"one\" holds it already",
         "leave out \"one\" or \"two\""},
        {drawn("bag label",
               {area("dish", "\"dish\""), area("pen", "\"cook\"", ", kind = \"pencil\"")}),
         5, 77, "\"pencil\" is not a kind of area", ""},
        {drawn("label for a bag", {area("dish", "\"dish\", \"steps\"")}), 1, 9,
         "\"label for a bag\" is not a kind of print", ""},
        {drawn("door list", {"rows = { words = \"rows\", x_height = [\"2 mm\", \"3 mm\"] }"}), 4,
         37, "x_height has 2 lengths, expected 3: smallest, comfortable, largest", ""},
        {drawn("door list",
               {"rows = { words = \"rows\", x_height = [\"2 mm\", \"3 mm\", \"2.5 mm\"] }"}),
         4, 37, "the x-heights do not rise", "give the smallest first"},
    });
}

TEST_CASE("what is wrong with a layout's measures is told at its place too") {
    const std::string body =
        drawn("bag label", {area("dish", "\"dish\""), area("thaw", "\"thaw\"")});
    const std::string large = drawn(
        "bag label", {"dish = { words = \"dish\", x_height = [\"1.2 mm\", \"3 mm\", \"61 mm\"] }"});
    const std::string small = drawn(
        "bag label", {"dish = { words = \"dish\", x_height = [\"1.1 mm\", \"3 mm\", \"60 mm\"] }"});
    check({
        {R"(groups = ["facts", "body", "facts"])"
         "\n" +
             body,
         1, 28, "\"facts\" stands here twice", ""},
        {R"(groups = ["a", "b", "c", "d", "e", "f", "g", "h", "i"])"
         "\n" +
             body,
         1, 10, "a layout has at most 4 groups", ""},
        {R"(groups = ["facts"])"
         "\n" +
             drawn("bag label", {area("dish", "\"dish\"", ", group = \"fact\"")}),
         5, 79, "\"fact\" is none of the layout's groups", "expected \"facts\""},
        {drawn("bag label", {area("dish", "\"dish\"", ", group = \"fact\"")}), 4, 79,
         "\"fact\" is none of the layout's groups", "expected \"all\""},
        {R"(columns = ["share", "12 mm"])"
         "\n" +
             body,
         1, 11, "2 sizes are given, but the picture has 1 columns", ""},
        {R"(rows = ["content"])"
         "\n" +
             body,
         1, 8, "1 sizes are given, but the picture has 2 rows", ""},
        {R"(rows = ["content", "a third"])"
         "\n" +
             body,
         1, 20, "\"a third\" is not the size of a column or row", "write \"content\""},
        {R"(row_gap_most = "0.9 mm")"
         "\n" +
             body,
         1, 16, "the gap at most is below row_gap", "give row_gap again"},
        {"cells = [2.4, 1.2]\n" + body, 1, 9,
         "expected two ratios of width to height, the smaller first", "cells = [1.2, 2.4]"},
        {R"(heights = ["44 mm", "44 mm"])"
         "\n" +
             body,
         1, 11, "expected two heights of cells, the smaller first", "heights = "},
        {R"(spare_under = ["thaw", "finish"])"
         "\n" +
             body,
         1, 24, "\"finish\" is no area of the picture", "expected \"dish\" or \"thaw\""},
        {"print = \"bag label\"\npicture = [\"dish dish\", \"dish thaw\"]\n", 2, 31, "", ""},
        {large, 4, 56, "an x-height of 61.00 mm is not allowed", "1.2 mm is the floor"},
        {small, 4, 38, "an x-height of 1.10 mm is not allowed", "1.2 mm is the floor"},
        {drawn("bag label", {"dish = { words = \"dish\", labels = \"above\", x_height = [\"1.5 "
                             "mm\", \"2 mm\", \"3 "
                             "mm\"] }"}),
         4, 55, "labels above are set at 0.75 of the size and would be under 1.2 mm",
         "let the smallest x-height be at least 1.6 mm"},
    });
}

TEST_CASE("a layout keeps the measures that are given, and those that are usual") {
    const std::string body =
        drawn("bag label", {area("dish", "\"dish\""), area("thaw", "\"thaw\"")});
    const auto given = testing::layout_from("cells = [1.5, 2.5]\nheights = [\"20 mm\", \"44 mm\"]\n"
                                            "row_gap = \"2 mm\"\nrow_gap_most = \"2 mm\"\n"
                                            "column_gap = \"3 mm\"\nspare_under = [\"thaw\"]\n" +
                                            body);
    CHECK(given.narrowest == 1.5);
    CHECK(given.widest == 2.5);
    CHECK(given.lowest.in_millimetres() == doctest::Approx(20));
    CHECK(given.highest.in_millimetres() == doctest::Approx(44));
    CHECK(given.row_gap.in_millimetres() == doctest::Approx(2));
    CHECK(given.most_row_gap.in_millimetres() == doctest::Approx(2));
    CHECK(given.column_gap.in_millimetres() == doctest::Approx(3));
    CHECK(given.spare_under == std::vector<std::string>{"thaw"});
    const auto usual = testing::layout_from(body);
    CHECK(usual.row_gap.in_millimetres() == doctest::Approx(1));
    CHECK(usual.most_row_gap.in_millimetres() == doctest::Approx(2));
    CHECK(usual.column_gap.in_millimetres() == doctest::Approx(2));
    CHECK(usual.spare_under.empty());
}

TEST_CASE("an area with what no print may lack does not drop, and others do") {
    for (const auto& kind : kinds) {
        for (const auto& field : wording::fields_of(kind.kind)) {
            CAPTURE(kind.name);
            CAPTURE(field.name);
            const auto quoted = "\"" + field.name + "\"";
            const auto faults = faults_of(drawn(kind.name, {area("some", quoted, ", drop = 1")}));
            CHECK(has_errors(faults) == (field.stays == wording::Stays::Always));
            if (has_errors(faults)) {
                CHECK(faults[0].message ==
                      "this area may not drop: no " + kind.name + " may lack " + quoted);
            }
        }
    }
}

TEST_CASE("an older layout that says leave is read, and shown the key's name of today") {
    const auto text = drawn("bag label", {area("cook", "\"cook\"", ", leave = 2")});
    const auto faults = faults_of(text);
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].severity == Severity::Caution);
    CHECK(faults[0].hints == std::vector<std::string>{"write drop = 2"});
    CHECK(text_of(testing::layout_from(text).areas[0])->drop == 2);
}

TEST_CASE("a print is refused where its layout has no place for what it may not lack") {
    for (const auto& kind : kinds) {
        CAPTURE(kind.name);
        CHECK(faults_without(kind, "").empty());
        for (const auto& name : always(kind.kind)) {
            CAPTURE(name);
            const auto faults = faults_without(kind, name);
            if (name == "raw" || name == "contains-of-finish" ||
                is_said_by_others(kind.kind, name)) {
                CHECK(faults.empty()); // it stands beside another, or that says it, where no area
                                       // has it
                continue;
            }
            REQUIRE(faults.size() == 1);
            const auto& unplaced = std::get<Unplaced>(faults[0].why);
            CHECK(unplaced.fields == std::vector{name});
            CHECK(unplaced.picture.line == 2);
        }
    }
}

TEST_CASE("a field that others say together has a place where all of them have one") {
    wording::Print print;
    print.kind = wording::Kind::CookDayCard;
    print.fields = {testing::field("sequence", {"x"}), testing::field("timeline", {"x"}),
                    testing::field("steps", {"x"})};
    const auto lacks = [&](const std::vector<std::string>& placed) {
        std::vector<std::string> areas;
        for (const auto& name : placed) {
            areas.push_back(area(name, "\"" + name + "\""));
        }
        return unplaced(print, testing::layout_from(drawn("cook-day card", areas)));
    };
    CHECK(lacks({"sequence"}).empty());
    CHECK(lacks({"timeline", "steps"}).empty());
    CHECK(lacks({"timeline"}) == std::vector<std::string>{"sequence", "steps"});
    CHECK(lacks({"steps"}) == std::vector<std::string>{"sequence", "timeline"});
}

TEST_CASE("a layout need not have what a print does not say") {
    auto print = testing::small_label();
    const auto layout = testing::layout_from(testing::small_layout);
    CHECK(unplaced(print, layout).empty());
    print.fields.push_back({"contains", {}, {}}); // no allergens
    CHECK(unplaced(print, layout).empty());
    print.fields.back().paragraphs = testing::field("", {"Contains celery"}).paragraphs;
    CHECK(unplaced(print, layout) == std::vector<std::string>{"contains"});
}

} // namespace layout_file_test

#include "base/text_file.h"
#include "support/edits.h"
#include "toml/edit.h"

#include <doctest/doctest.h>
#include <filesystem>

using namespace thawslip;
using namespace thawslip::test_support;
using What = toml::Edit::What;

namespace {

const std::string day = R"(# the orchard crew
[day]
made    = 2026-10-17   # a Saturday
kitchen = "Orchard house"

# the big pot
[[package]]
dish      = "Barley stew"
servings  = 4          # in each bag
# note    = "later"

[package.thaw]
method = "refrigerator"

[[package.finish]]
add = "1 l stock"      # homemade

[[package.finish]]
add = "spinach"

[package.cook]
in    = "pot"
steps = [
    "Tip it in.",      # slowly
    # then wait
    "Stir.",
]

# ---- baked ----

[[package]]
dish = 'Celeriac gratin'
thaw.method = "from frozen"
cook = {in = "oven", time = "50 min"}
contains = ["milk", "celery"]
)";

std::string edited(const toml::Edit& edit, const std::string& text = day) {
    const auto result = toml::edit(text, {edit});
    CAPTURE(edit.path.text());
    if (!result) {
        FAIL(result.fault());
    }
    CHECK(fault_of(text, edit, result.value()) == "");
    return result.value().text;
}

std::string set(const char* path, toml::Value value, const std::string& text = day) {
    return edited({What::Set, KeyPath{path}, std::move(value)}, text);
}

std::string with(std::string before, std::string after) {
    auto text = day;
    const auto at = text.find(before);
    REQUIRE(at != std::string::npos);
    return text.replace(at, before.size(), after);
}

std::string refusal(const toml::Edit& edit, const std::string& text = day) {
    const auto result = toml::edit(text, {edit});
    REQUIRE_FALSE(result);
    return result.fault();
}

/// A day as somebody may write it: tables with headers, dots or braces, aligned or not, with
/// remarks and blank lines anywhere.
class RandomDay {
public:
    explicit RandomDay(Random& random) : random_{random} {}

    std::string text() {
        line("[day]");
        key("made", "2026-10-17");
        for (auto n = 1 + random_.below(3); n > 0; --n) {
            package();
        }
        if (random_.chance(4)) {
            text_.pop_back();
        }
        return text_;
    }

private:
    void line(const std::string& words) {
        static const std::vector<std::string> between = {
            "", "\n", "\n\n", "# a remark\n", "\n# a remark\n\n", "\n# note = \"x\"\n"};
        text_ += words + (random_.chance(4) ? "  # of the line\n" : "\n");
        text_ += between[random_.chance(2) ? 0 : random_.below(between.size())];
    }
    void key(const std::string& name, const std::string& value) {
        const auto pad = is_aligned_ ? 10 - std::min<std::size_t>(name.size(), 9) : 1;
        line(indent_ + name + std::string(pad, ' ') + "= " + value);
    }
    void package() {
        is_aligned_ = random_.chance(2);
        indent_ = random_.chance(3) ? "  " : "";
        line(indent_ + "[[package]]");
        key("dish", random_.chance(2) ? "\"Stew\"" : "'Stew'");
        key("servings", "4");
        if (random_.chance(2)) {
            key("contains", random_.chance(2) ? "[\"milk\", \"celery\",]"
                                              : "[ # all\n  \"milk\", # cow\n\n  \"celery\"\n ]");
        }
        if (random_.chance(2)) {
            key("thaw.method", "\"microwave\"");
            key("cook", "{ in = \"pot\", time = \"1 h\" }");
        } else {
            finishes();
            line("[package.cook]");
            key("steps", "[\n    \"One.\",\n    # between\n    \"Two.\", # last\n]");
        }
    }
    void finishes() {
        for (auto n = random_.below(3); n > 0; --n) {
            line(indent_ + "[[package.finish]]");
            key("add", "\"\"\"\nstock\n[not.a.header]\n\"\"\"");
        }
    }

    Random& random_;
    std::string text_ = "# the crew\n\n";
    std::string indent_;
    bool is_aligned_ = false;
};

} // namespace

TEST_CASE("a key is set in braces that are empty, and behind what stands in others") {
    const std::string bare = "[[package]]\ndish = \"Pear pot\"\ncook = {}\nthaw = { }\n";
    CHECK(set("package[1].cook.in", {"pan", {}}, bare) ==
          "[[package]]\ndish = \"Pear pot\"\ncook = {in = \"pan\"}\nthaw = { }\n");
    CHECK(set("package[2].cook.until", {"74 °C", {}}) ==
          with("time = \"50 min\"}", "time = \"50 min\", until = \"74 °C\"}"));
}

TEST_CASE("a value is put into the place of another, and nothing else changes") {
    CHECK(set("package[1].servings", {std::int64_t{6}, {}}) == with("= 4 ", "= 6 "));
    CHECK(set("day.made", {toml::Date{std::chrono::year{2026} / 11 / 2}, {}}) ==
          with("2026-10-17", "2026-11-02"));
    CHECK(set("package[1].finish[1].add", text_value("2 l stock")) == with("1 l", "2 l"));
    CHECK(set("package[2].cook.time", text_value("1 h")) == with("50 min", "1 h"));
    CHECK(set("package[2].thaw.method", text_value("microwave")) ==
          with("from frozen", "microwave"));
    CHECK(set("package[2].dish", text_value("Leek gratin")) == with("Celeriac", "Leek"));
    CHECK(set("package[2].dish", text_value("Cook's gratin")) ==
          with("'Celeriac gratin'", "\"Cook's gratin\""));
    CHECK(set("package[1].dish", text_value("Barley stew")) == day);
}

TEST_CASE("a key that is not there stands behind the last of its table, as they stand") {
    CHECK(set("package[1].weight", text_value("1.5 kg")) ==
          with("# in each bag\n", "# in each bag\nweight    = \"1.5 kg\"\n"));
    CHECK(set("package[2].servings", {std::int64_t{2}, {}}) ==
          with("\"celery\"]\n", "\"celery\"]\nservings = 2\n"));
    CHECK(set("package[2].cook.until", text_value("74 °C")) ==
          with("50 min\"", "50 min\", until = \"74 °C\""));
    CHECK(set("package[2].thaw.time", text_value("2 h")) ==
          with("from frozen\"\n", "from frozen\"\nthaw.time = \"2 h\"\n"));
    CHECK(set("package[1].cook.time", text_value("1 h")) ==
          with("\"Stir.\",\n]\n", "\"Stir.\",\n]\ntime  = \"1 h\"\n"));
}

TEST_CASE("a table that is not there is made behind the keys of the one that it is in") {
    const std::string short_day = "[[package]]\ndish = \"A\"\n\n[[package.finish]]\nadd = \"b\"\n";
    CHECK(set("package[1].thaw.method", text_value("microwave"), short_day) ==
          "[[package]]\ndish = \"A\"\n\n[package.thaw]\nmethod = \"microwave\"\n\n"
          "[[package.finish]]\nadd = \"b\"\n");
    CHECK(set("day.made", {toml::Date{std::chrono::year{2026} / 10 / 17}, {}}, short_day) ==
          "[day]\nmade = 2026-10-17\n\n" + short_day);
    CHECK(set("package[1].side[1].add", text_value("bread"), short_day) ==
          short_day.substr(0, short_day.size() - 1) + "\n\n[[package.side]]\nadd = \"bread\"\n");
    CHECK(set("day.kitchen", text_value("Orchard"), "") == "[day]\nkitchen = \"Orchard\"\n");
}

TEST_CASE("a key is taken out with its line and the remark in it") {
    const auto out = [](const char* path) { return edited({What::TakeOut, KeyPath{path}}); };
    CHECK(out("package[1].servings") == with("servings  = 4          # in each bag\n", ""));
    CHECK(out("package[2].cook.in") == with("in = \"oven\", ", ""));
    CHECK(out("package[2].cook.time") == with(", time = \"50 min\"", ""));
    CHECK(out("package[2].thaw.method") == with("thaw.method = \"from frozen\"\n", ""));
    CHECK(out("package[2].thaw") == with("thaw.method = \"from frozen\"\n", ""));
    CHECK(out("package[1].thaw") == with("[package.thaw]\nmethod = \"refrigerator\"\n\n", ""));
    CHECK(out("package[1].nothing") == day);
}

TEST_CASE("a list changes element by element, and remarks in it stay") {
    const auto steps = [](std::vector<toml::Value> texts) {
        return set("package[1].cook.steps", list_of_values(std::move(texts)));
    };
    const auto text = [](const char* words) { return text_value(words); };
    CHECK(steps({text("Tip it in."), text("Wait."), text("Stir.")}) ==
          with("    \"Stir.\"", "    \"Wait.\",\n    \"Stir.\""));
    CHECK(steps({text("Tip it in."), text("Stir."), text("Serve.")}) ==
          with("\"Stir.\",\n", "\"Stir.\",\n    \"Serve.\",\n"));
    CHECK(steps({text("Stir.")}) == with("    \"Tip it in.\",      # slowly\n", ""));
    CHECK(steps({text("Pour it in."), text("Stir.")}) == with("Tip", "Pour"));
    CHECK(edited({What::Add, KeyPath{"package[2].contains"}, text("mustard")}) ==
          with("\"celery\"]", "\"celery\", \"mustard\"]"));
    CHECK(edited({What::Remove, KeyPath{"package[2].contains[1]"}}) == with("\"milk\", ", ""));
    CHECK(edited({What::Move, KeyPath{"package[2].contains[1]"}, {}, 1}) ==
          with("\"milk\", \"celery\"", "\"celery\", \"milk\""));
}

TEST_CASE("what is put behind the last element leaves the remark beside that one") {
    CHECK(set("steps", list_of_values({text_value("Wait."), text_value("Stir.")}),
              "steps = [\n    \"Wait.\" # a while\n]\n") ==
          "steps = [\n    \"Wait.\", # a while\n    \"Stir.\"\n]\n");
    CHECK(set("steps", list_of_values({text_value("Wait."), text_value("Stir.")}),
              "steps = [\n    \"Wait.\", # a while\n]\n") ==
          "steps = [\n    \"Wait.\", # a while\n    \"Stir.\",\n]\n");
}

TEST_CASE("an element is added at the end of its list, with its tables") {
    const auto dish = table_of({{"dish", text_value("")},
                                {"servings", {std::int64_t{4}, {}}},
                                {"thaw", table_of({{"method", text_value("microwave")}})}});
    CHECK(edited({What::Add, KeyPath{"package"}, dish}) ==
          day + "\n[[package]]\ndish = \"\"\nservings = 4\n\n[package.thaw]\nmethod = "
                "\"microwave\"\n");
    CHECK(edited(
              {What::Add, KeyPath{"package[1].finish"}, table_of({{"add", text_value("salt")}})}) ==
          with("add = \"spinach\"\n", "add = \"spinach\"\n\n[[package.finish]]\nadd = \"salt\"\n"));
    CHECK(edited({What::Add, KeyPath{"package"}, table_of({{"dish", text_value("A")}})}, "") ==
          "[[package]]\ndish = \"A\"\n");
}

TEST_CASE("an element goes with its tables and the remarks directly above it") {
    const auto begin = day.find("# the big pot");
    const auto end = day.find("# ---- baked");
    CHECK(edited({What::Remove, KeyPath{"package[1]"}}) == day.substr(0, begin) + day.substr(end));
    CHECK(edited({What::Remove, KeyPath{"package[2]"}}) ==
          day.substr(0, day.find("\n[[package]]\ndish = 'Cel")));
    CHECK(edited({What::Remove, KeyPath{"package[1].finish[1]"}}) ==
          with("[[package.finish]]\nadd = \"1 l stock\"      # homemade\n\n", ""));
}

TEST_CASE("a paragraph of keys turned into remarks goes with its table, any other stays") {
    const std::string before = "[[package]]\ndish = \"A\"\n";
    const std::string after = "\n[[package]]\ndish = \"B\"\n";
    for (const auto* key : {"# note = 1", "#note\t= 1", "# thaw.method = 1", "# [package.thaw]"}) {
        CAPTURE(key);
        CHECK(edited({What::Remove, KeyPath{"package[1]"}}, before + "\n" + key + "\n" + after) ==
              after.substr(1));
    }
    for (const std::string remark : {"# of two bags: see there", "# = 1", "# ---- baked"}) {
        CAPTURE(remark);
        CHECK(edited({What::Remove, KeyPath{"package[1]"}},
                     before + "\n" + remark + "\n" + after) == std::string{remark} + "\n" + after);
    }
}

TEST_CASE("an element is copied behind itself and moved among its like") {
    const auto first = day.substr(day.find("# the big pot"),
                                  day.find("\n\n# ---- baked") - day.find("# the big pot"));
    const auto second = day.substr(day.find("[[package]]\ndish = 'Cel"));
    CHECK(edited({What::Copy, KeyPath{"package[1]"}}) == with(first, first + "\n\n" + first));
    auto moved = with(second, first + "\n");
    moved.replace(moved.find(first), first.size(), second.substr(0, second.size() - 1));
    CHECK(edited({What::Move, KeyPath{"package[1]"}, {}, 1}) == moved);
    CHECK(edited({What::Move, KeyPath{"package[2]"}, {}, -1}) == moved);
    CHECK(edited({What::Move, KeyPath{"package[1]"}, {}, 1}, moved) == day);
}

TEST_CASE("lines of Windows and a last line without an end stay as they are") {
    CHECK(set("day.kitchen", text_value("a\nb"), "[day]\r\nmade = 2026-10-17\r\n") ==
          "[day]\r\nmade = 2026-10-17\r\nkitchen = \"\"\"\r\na\r\nb\"\"\"\r\n");
    CHECK(set("day.kitchen", text_value("a"), "[day]\nmade = 2026-10-17") ==
          "[day]\nmade = 2026-10-17\nkitchen = \"a\"");
    CHECK(set("contains", list_of_values({text_value("milk")}),
              "contains = [\"milk\", \"celery\"]") == "contains = [\"milk\"]");
}

TEST_CASE("a key in quotes is found and written in quotes") {
    const auto text = std::string{"[\"a.b\"]\n\"c d\" = 1\n"};
    const auto result = toml::edit(text, {{What::Set, KeyPath{"\"a.b\".\"c d\""}, {true, {}}},
                                          {What::Set, KeyPath{"\"a.b\".\"e=f\""}, {false, {}}}});
    REQUIRE(result);
    CHECK(result.value().text == "[\"a.b\"]\n\"c d\" = true\n\"e=f\" = false\n");
}

TEST_CASE("a value that could not be read is put right") {
    const auto spoilt = with("servings  = 4", "servings  = four");
    CHECK(set("package[1].servings", {std::int64_t{4}, {}}, spoilt) == day);
    CHECK(set("package[2].servings", {std::int64_t{2}, {}}, spoilt) != spoilt);
}

TEST_CASE("what cannot be done is refused in words") {
    const auto value = text_value("x");
    CHECK(refusal({What::Set, KeyPath{"package"}, value}).find("table") != std::string::npos);
    CHECK(refusal({What::Set, KeyPath{"package[1].thaw"}, value}).find("is a table") !=
          std::string::npos);
    for (const auto* path : {"", "package[", "package[0].dish", "a..b", "[1]", "package[x]", ".a",
                             "package[1]dish", "package[9].dish", "package[1].dish.more",
                             "package.dish", "\"a", "package[99999999999999999999].a"}) {
        CAPTURE(path);
        CHECK_FALSE(refusal({What::Set, KeyPath{path}, value}).empty());
    }
    CHECK(refusal({What::Set, KeyPath{"package[9].dish"}, value}) ==
          "there is no \"package.dish\" to be set");
    CHECK(refusal({What::Set, KeyPath{"day.made"}, value}, "[day\n").find("belongs to no key") !=
          std::string::npos);
    CHECK(refusal({What::TakeOut, KeyPath{"food"}}, "food = \"a\"\nfood = \"b\"\n")
              .find("change the text itself") != std::string::npos); // the second would count then
    CHECK(refusal({What::TakeOut, KeyPath{"contains"}},
                  "contains = [\"celery\"\n\n[thaw]\nmethod = \"microwave\"\n")
              .find("change the text itself") != std::string::npos); // a header would go with it
    CHECK_FALSE(refusal({What::Move, KeyPath{"package[1]"}, {}, -1}).empty());
    CHECK_FALSE(refusal({What::Remove, KeyPath{"package[3]"}}).empty());
    CHECK_FALSE(refusal({What::Remove, KeyPath{"day.made"}}).empty());
    CHECK_FALSE(refusal({What::Add, KeyPath{"day.made"}, value}).empty());
    CHECK_FALSE(refusal({What::Add, KeyPath{"package"}, value}).empty());
}

TEST_CASE("edits follow one another, and their changes make the text") {
    const auto result =
        toml::edit(day, {{What::Set, KeyPath{"package[1].weight"}, text_value("2 kg")},
                         {What::Remove, KeyPath{"package[2]"}},
                         {What::Set, KeyPath{"package[1].dish"}, text_value("X")}});
    REQUIRE(result);
    auto text = day;
    for (const auto& [offset, length, words] : result.value().changes) {
        text.replace(offset, length, words);
    }
    CHECK(text == result.value().text);
}

static void hold(const std::string& text, const toml::Edit& edit, const toml::Edited& edited) {
    CAPTURE(static_cast<int>(edit.what));
    CAPTURE(edit.path.text());
    CAPTURE(toml::literal_of(edit.value));
    CAPTURE(text);
    CAPTURE(edited.text);
    REQUIRE(fault_of(text, edit, edited) == "");
}

TEST_CASE("any edits of the samples change what they are to change and nothing else") {
    Random random{17};
    int done = 0;
    for (const auto& file : std::filesystem::directory_iterator{THAWSLIP_SOURCE_DIR "/samples"}) {
        if (file.path().extension() != ".toml") {
            continue;
        }
        auto text = read_text_file(file.path().string(), 1U << 20U).value();
        for (int i = 0; i < 150; ++i) {
            Diagnostics faults;
            const auto document = toml::parse(text, "", faults);
            const auto edit = random_edit(document.root(), random);
            const auto result = toml::edit(text, {edit});
            if (!result) {
                continue;
            }
            ++done;
            hold(text, edit, result.value());
            text = i % 10 == 9 ? read_text_file(file.path().string(), 1U << 20U).value()
                               : result.value().text;
        }
    }
    CHECK(done > 300);
}

TEST_CASE("a value that is set and set back leaves the text as it was") {
    Random random{18};
    for (const auto* name : {"orchard-day.toml", "two-days.toml", "windfall-day.toml"}) {
        const auto text =
            read_text_file(std::string{THAWSLIP_SOURCE_DIR "/samples/"} + name, 1U << 20U).value();
        Diagnostics faults;
        const auto document = toml::parse(text, "", faults);
        for (const auto& [path, value, is_element] : paths_of(document.root())) {
            const auto written =
                text.substr(value->place.begin, value->place.end - value->place.begin);
            if (toml::literal_of(*value) != written) {
                continue; // written in another way than ours
            }
            const std::string written_at = path; // clang 14 captures no structured binding
            CAPTURE(written_at);
            const auto there = toml::edit(text, {{What::Set, KeyPath{path}, random_value(random)}});
            REQUIRE(there);
            const auto back = toml::edit(there.value().text, {{What::Set, KeyPath{path}, *value}});
            REQUIRE(back);
            CHECK(back.value().text == text);
        }
    }
}

TEST_CASE("any edits of random days change what they are to change and nothing else") {
    Random random{20};
    int done = 0;
    for (int i = 0; i < 400; ++i) {
        auto text = RandomDay{random}.text();
        const auto first = text;
        for (int step = 0; step < 5; ++step) {
            Diagnostics faults;
            const auto edit = random_edit(toml::parse(text, "", faults).root(), random);
            REQUIRE(faults.empty());
            const auto result = toml::edit(text, {edit});
            // Nothing that is an edit of this text may come to be refused only when it is read.
            CHECK((result || result.fault().find("as the text is written") == std::string::npos));
            if (result) {
                ++done;
                hold(text, edit, result.value());
                text = result.value().text;
            }
        }
    }
    CHECK(done > 1200);
}

#include "wording/bilingual.h"

#include <doctest/doctest.h>

using namespace thawslip::wording;

namespace {

Paragraph line(const std::string& label, const std::string& text) {
    Paragraph paragraph;
    paragraph.label = label;
    if (!text.empty()) {
        paragraph.spans.push_back({text, Emphasis::Plain});
    }
    return paragraph;
}

Print card(std::vector<Paragraph> finish, std::string page) {
    Print print;
    print.fields = {{"dish", {line("", "Bean and barley pot")}, {}},
                    {"kitchen", {line("", page.empty() ? "Von A" : "From A")}, {}},
                    {"finish", std::move(finish), {}}};
    print.more_phrase = "More: " + page;
    print.page_phrase = std::move(page);
    return print;
}

Paragraph second(Paragraph paragraph) {
    paragraph.voice = Voice::Second;
    return paragraph;
}

} // namespace

TEST_CASE("each line is followed by what the second language says in its place") {
    auto ticked = line("At the start", "Add 1 l (4¼ cups) stock");
    ticked.marker = Marker::TickBox;
    auto echoed = line("Am Anfang", "Dazu 1 l (4¼ Tassen) stock");
    echoed.marker = Marker::TickBox;
    const auto both = bilingual(
        card({ticked, line("Last 10 min", "200 g spinach")}, "Card {0} of {1}"),
        card({echoed, line("In den letzten 10 min", "200 g spinach")}, "Karte {0} von {1}"));
    const std::vector<Paragraph> expected = {
        ticked, second(line("Am Anfang", "Dazu 1 l (4¼ Tassen) stock")), // one box is enough
        line("Last 10 min", "200 g spinach"),
        second(line("In den letzten 10 min", "200 g spinach")), // a phrase keeps its words
    };
    CHECK(both.field("finish")->paragraphs == expected);
    CHECK(both.page_phrase == "Card {0} of {1}");
    CHECK(both.second_page_phrase == "Karte {0} von {1}"); // never on one line with the first
    CHECK(both.more_phrase == "More: Card {0} of {1}");
    CHECK(both.second_more_phrase == "More: Karte {0} von {1}");
}

TEST_CASE("where a field gives way the second language stays") {
    auto english = card({line("With it", "300 g rice")}, "x");
    english.fields.back().shorter = {{line("With it", "rice: see the card")}, {}};
    auto german = card({line("Dazu", "300 g rice")}, "y");
    german.fields.back().shorter = {{line("Dazu", "rice: siehe Karte")}, {}};
    const auto both = bilingual(english, german);
    CHECK(both.field("finish")->said(1) == std::vector{line("With it", "rice: see the card"),
                                                       second(line("Dazu", "rice: siehe Karte"))});
    CHECK(both.field("finish")->said(2).empty()); // left out in both
}

TEST_CASE("the cook's own words stand once, and again where a unit is called otherwise") {
    const auto own = line("", "150 ml (½ cup 2 tbsp) cream");
    const auto echoed = line("", "150 ml (½ Tasse 2 EL) cream");
    const auto both = bilingual(card({own}, "x"), card({echoed}, "y"));
    CHECK(both.field("finish")->paragraphs == std::vector{own, second(echoed)});
    CHECK(bilingual(card({own}, "x"), card({own}, "y")).field("finish")->paragraphs ==
          std::vector{own});
}

TEST_CASE("what both languages say alike stands once, and so does whose kitchen it is") {
    const auto both = bilingual(card({}, "x"), card({}, ""));
    CHECK(both.field("dish")->paragraphs.size() == 1);
    CHECK(both.field("kitchen")->paragraphs == std::vector{line("", "From A")});
}

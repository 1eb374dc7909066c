#include "service/messages.h"

#include <doctest/doctest.h>

using namespace thawslip;
using service::Messages;

namespace {

toml::Document document(const std::string& text) {
    Diagnostics faults;
    return toml::parse(text, "day.toml", faults);
}

Diagnostic at(std::uint32_t line, const std::string& message) {
    return {Severity::Error, {"day.toml", line, 1, 1}, {}, message, {}};
}

} // namespace

TEST_CASE("what stands in no file reads as one line and its hints") {
    Messages messages;
    messages.error("there is no such stock", {"name another"});
    messages.caution("the freezer is full");
    messages.note("printed as it was then");
    CHECK(to_text(messages) == "error: there is no such stock\n    hint: name another\n"
                               "caution: the freezer is full\nnote: printed as it was then\n");
}

TEST_CASE("what stands in a file comes by its place, with its line, after what was said before") {
    const std::vector documents{document("a = 1\nb = 2\n")};
    Messages messages;
    messages.note("first");
    messages.add({at(2, "second line"), at(1, "first line")}, documents);
    CHECK(to_text(messages) == "note: first\n"
                               "day.toml:1:1: error: first line\n    a = 1\n    ^\n"
                               "day.toml:2:1: error: second line\n    b = 2\n    ^\n");
}

TEST_CASE("diagnostics of one file keep the order in which they came") {
    Messages messages;
    messages.add_in_order({at(2, "second line"), at(1, "first line")}, "a = 1\nb = 2\n");
    REQUIRE(messages.all().size() == 2);
    CHECK(messages.all().front().what.message == "second line");
}

TEST_CASE("only an error is an error") {
    Messages messages;
    messages.caution("mind this");
    CHECK(!messages.have_errors());
    messages.error("not so");
    CHECK(messages.have_errors());
}

TEST_CASE("what has been said already is not said again, in one file or in none") {
    const std::vector documents{document("a = 1\nb = 2\n")};
    Messages said;
    said.add({at(1, "wrong")}, documents);
    Messages more;
    more.add({at(1, "wrong"), at(2, "wrong")}, documents);
    said.add_new(more);
    REQUIRE(said.all().size() == 2);
    CHECK(said.all().back().what.where.line == 2);
    said.add(more);
    CHECK(said.all().size() == 4);
}

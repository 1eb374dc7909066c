// A request as it comes over the wire, without the wire: its head taken, its body, the guard, and
// what the desk answers. First as it is; then once more with what a page of ours would say of
// itself, so that inputs come past the guard.

#include "desk/desk.h"
#include "desk/phones/phone_door.h"
#include "fuzz/target.h"
#include "http/incoming.h"
#include "json/value.h"
#include "support/command.h"
#include "support/fake_machine.h"

#include <algorithm>
#include <string>
#include <string_view>

using namespace thawslip;

namespace {

const std::string& sample() {
    static const auto text =
        test_support::read_file(THAWSLIP_SOURCE_DIR "/samples/orchard-day.toml");
    return text;
}

/// What stands before `mark`, which is taken away with it.
std::string take_until(std::string_view& text, std::string_view mark) {
    const auto end = std::min(text.find(mark), text.size());
    auto part = std::string{text.substr(0, end)};
    text.remove_prefix(std::min(text.size(), end + mark.size()));
    return part;
}

/// Lines end with a line feed alone. What is left of `text` is the body.
http::Head head_of(std::string_view& text) {
    http::Head head;
    std::string_view line;
    auto first = take_until(text, "\n");
    line = first;
    head.method = take_until(line, " ");
    head.target = take_until(line, " ");
    head.version = line.empty() ? "HTTP/1.1" : std::string{line};
    while (!text.empty()) {
        const auto header = take_until(text, "\n");
        if (header.empty()) {
            break;
        }
        line = header;
        auto name = take_until(line, ": ");
        head.headers.emplace_back(std::move(name), std::string{line});
    }
    return head;
}

/// Says of the request what our page says of itself.
http::Head as_page(http::Head head, const std::string& key = "key") {
    std::erase_if(head.headers, [](const auto& header) {
        return header.first == "Host" || header.first == "Origin" ||
               header.first == "Content-Type" || header.first == "Thawslip-Key";
    });
    for (const auto& header :
         {std::pair{"Host", "127.0.0.1:8123"}, std::pair{"Origin", "http://127.0.0.1:8123"},
          std::pair{"Content-Type", "application/json"}, std::pair{"Thawslip-Key", key.c_str()}}) {
        head.headers.emplace_back(header);
    }
    return head;
}

void hold_answer(const http::Response& response) {
    fuzz::hold(response.status >= 200 && response.status < 500,
               "an answer, and no fault of the system where none of it failed");
    const bool is_json = response.type != "application/json" || response.status == 304 ||
                         !json::parsed(response.body).is_discarded();
    fuzz::hold(is_json, "what says that it is JSON is JSON");
    for (const auto& [name, value] : response.headers) {
        fuzz::hold(value.find_first_of("\r\n") == std::string::npos, "a header is one line");
    }
}

void hold_refusal(const http::Response& response) {
    fuzz::hold(response.status >= 400, "a refusal refuses");
    fuzz::hold(!json::parsed(response.body).is_discarded(), "a refusal says so in JSON");
}

void ask(const http::Head& head, std::string_view body) {
    const http::Terms terms{
        {"127.0.0.1:8123", http::one_key("key"), {"/api/key"}}, {}, desk::body_limit};
    auto incoming = http::take_head(head, terms);
    http::take_body(incoming, body.substr(0, body.size() / 2), terms.limits);
    http::take_body(incoming, body.substr(body.size() / 2), terms.limits);
    if (incoming.refused) {
        hold_refusal(*incoming.refused);
        return;
    }
    fuzz::hold(incoming.request.body == body, "a body that is let in is whole");
    test_support::FakeMachine fake;
    fake.days = {{"orchard.toml", sample()}, {"pears.toml", "[day]\nmade = 2026-10-18\n"}};
    desk::Desk desk{test_support::machine_of(fake)};
    // Twice: what an answer has left behind is there for the next.
    hold_answer(http::guarded(desk.answer(incoming.request), incoming.request.path));
    hold_answer(http::guarded(desk.answer(incoming.request), incoming.request.path));
    fuzz::hold(fake.days.contains("orchard.toml"), "no day is ever lost");
}

/// A phone that was let in asks the same: nothing of what is the computer's alone comes of it.
void ask_as_phone(const http::Head& head, std::string_view body) {
    test_support::FakeMachine fake;
    fake.days = {{"orchard.toml", sample()}};
    auto machine = test_support::machine_of(fake);
    const std::string key(32, 'a');
    machine.phones = std::make_shared<desk::Phones>(
        desk::PhonePlace{"http://127.0.0.1:8123", "", [] { return desk::SteadyTime{}; },
                         [] { return std::string{"2026-10-17T12:00:00"}; },
                         [] { return std::string(32, 'b'); },
                         [](const std::vector<desk::Phone>&) {}},
        std::vector{desk::Phone{1, "Ida", key, ""}});
    auto phones = machine.phones;
    desk::Desk desk{std::move(machine)};
    const desk::PhoneDoor door{desk, *phones};
    auto guard = door.guard();
    guard.host = "127.0.0.1:8123";
    const http::Terms terms{std::move(guard), {}, desk::body_limit};
    auto incoming = http::take_head(head, terms);
    http::take_body(incoming, body, terms.limits);
    incoming.refused ? hold_refusal(*incoming.refused) : hold_answer(door.answer(incoming.request));
    const bool is_as_before = fake.prints.empty() && fake.reprints.empty() &&
                              fake.door_lists == 0 && fake.times_backed_up == 0 &&
                              fake.drafts.empty() && fake.days.size() == 1 &&
                              fake.days.at("orchard.toml") == sample() &&
                              phones->all().size() == 1 && !phones->open_offer();
    fuzz::hold(is_as_before, "a phone prints nothing, and changes no file, setting or phone");
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    auto text = fuzz::text_of(data, size);
    const auto head = head_of(text);
    ask(head, text);
    ask(as_page(head), text);
    auto phone = as_page(head, std::string(32, 'a'));
    phone.peer = "192.168.1.31";
    ask_as_phone(phone, text);
    return 0;
}

// The text of a code: whatever can be read is written again as the same values, and the same
// values give the same text. A text is also tried with its seal mended, or mutations would never
// get past the check characters.

#include "code/message.h"

#include "code/seal.h"
#include "fuzz/target.h"

using namespace thawslip;

namespace {

void hold_message(std::string_view text) {
    const auto read = code::parse(text);
    if (!read) {
        fuzz::hold(!read.fault().message.empty(), "a refusal says why");
        return;
    }
    const auto written = code::write(read.value()); // in the newest grammar
    const auto again = code::parse(written);
    fuzz::hold(again.ok() && again.value() == read.value(), "what is read is written the same");
    fuzz::hold(code::write(again.value()) == written, "the same values give the same text");
    fuzz::hold(code::folded(read.value()) == read.value(), "what is read is folded already");
    for (const auto& shorter : code::texts(read.value())) {
        fuzz::hold(code::parse(shorter).ok(), "every shorter form can be read");
    }
}

/// `body` up to the words that close a text, with the check that is right for it.
std::string sealed(std::string_view body, char version) {
    const auto end = body.rfind("END ");
    std::string text{body.substr(0, end)};
    text += end == std::string_view::npos ? "\nEND " : "END ";
    text += version;
    return text + code::check_characters(text);
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const auto text = fuzz::text_of(data, size);
    hold_message(text);
    hold_message(sealed(text, '1'));
    hold_message(sealed(text, '2'));
    return 0;
}

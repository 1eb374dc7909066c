// What a code costs: cutting the text, choosing, drawing with all eight masks weighed, reading
// back; and what qrcodegen needs when it weighs the masks itself. Prints microseconds, the median
// of many rounds.
#include "code/capacity.h"
#include "code/draw.h"
#include "code/message.h"
#include "code/segments.h"
#include "code/symbol.h"
#include "unit/code/samples.h"

#include <algorithm>
#include <chrono>
#include <fmt/format.h>
#include <qrcodegen/qrcodegen.hpp>
#include <vector>

using namespace thawslip;
using namespace thawslip::literals;
using qrcodegen::QrCode;
using qrcodegen::QrSegment;

namespace {

template <class Work>
double median_microseconds(Work work) {
    constexpr int rounds = 301;
    std::vector<double> times;
    for (int i = 0; i < rounds; ++i) {
        const auto start = std::chrono::steady_clock::now();
        work();
        const std::chrono::duration<double, std::micro> time =
            std::chrono::steady_clock::now() - start;
        times.push_back(time.count());
    }
    std::ranges::nth_element(times, times.begin() + rounds / 2);
    return times[rounds / 2];
}

template <class Work>
void report(const char* what, Work work) {
    fmt::print("{:<48} {:8.1f} us\n", what, median_microseconds(work));
}

void report_version(const std::string& text, int version) {
    const code::Segments cut = code::segment(text, code::group_of(version));
    const std::vector<QrSegment> bytes{QrSegment::makeBytes({text.begin(), text.end()})};
    report(fmt::format("version {}: draw, all masks weighed", version).c_str(),
           [&] { code::draw(cut.segments, version, code::Level::Low); });
    report(fmt::format("version {}: qrcodegen, all masks weighed", version).c_str(),
           [&] { QrCode::encodeSegments(bytes, QrCode::Ecc::LOW, version, version, -1, false); });
    report(fmt::format("version {}: qrcodegen, mask given", version).c_str(),
           [&] { QrCode::encodeSegments(bytes, QrCode::Ecc::LOW, version, version, 0, false); });
}

} // namespace

int main() {
    const auto texts = code::texts(thawslip::test_support::squash_stew());
    const auto chosen = code::choose_symbol(texts, 36_mm, {300}, 0.4_mm);
    if (!chosen) {
        return 1;
    }
    report("write the texts", [&] { code::texts(thawslip::test_support::squash_stew()); });
    report("parse a text", [&] { static_cast<void>(code::parse(texts.front())); });
    report("cut a text into segments",
           [&] { code::segment(texts.front(), code::VersionGroup::Small); });
    report("choose and draw a symbol",
           [&] { static_cast<void>(code::choose_symbol(texts, 36_mm, {300}, 0.4_mm)); });
    report("read a symbol back", [&] { code::read_back(chosen.value().symbol); });
    const std::string text(180, 'x');
    report_version(text, 9);
    report_version(text, 14);
    report_version(text, 30);
}

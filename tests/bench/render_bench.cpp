// What it costs to draw sheets of ten labels (some 60 words and a code each) as a PDF, once they
// are laid out: bytes and processor time a label, and how far the memory in use rises above its
// start.
#include "render/pdf.h"
#include "support/sheets.h"

#include <ctime>
#include <fmt/format.h>
#include <malloc.h>
#include <vector>

using namespace thawslip;

namespace {

double megabytes_in_use() {
    const auto info = ::mallinfo2();
    return static_cast<double>(info.uordblks + info.hblkhd) / 1e6;
}

void report(const std::vector<layout::Frame>& sheets, const typeset::FontSet& fonts, int labels) {
    const auto start = std::clock(); // of this process: others may be busy
    const double before = megabytes_in_use();
    double highest = before;
    std::size_t bytes = 0;
    render::PdfWriter writer{fonts, {"Orchard day", "en", {}}, [&bytes](std::string_view piece) {
                                 bytes += piece.size();
                             }};
    for (int sheet = 0; sheet < labels / 10; ++sheet) {
        writer.add(sheets[static_cast<std::size_t>(sheet) % sheets.size()]);
        if (sheet % 64 == 0) {
            highest = std::max(highest, megabytes_in_use());
        }
    }
    highest = std::max(highest, megabytes_in_use());
    writer.finish();
    const double time = 1e6 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
    fmt::print("{:>7} labels: {:>11} bytes, {:>7.0f} a label; {:>8.1f} us a label; {:>6.2f} MB\n",
               labels, bytes, static_cast<double>(bytes) / labels, time / labels, highest - before);
}

} // namespace

int main() {
    const auto fonts = test_support::shipped_fonts();
    std::vector<layout::Frame> sheets;
    for (int sheet = 0; sheet < 20; ++sheet) {
        sheets.push_back(test_support::label_sheet(fonts, sheet));
    }
    for (const int labels : {10, 10, 100, 1'000, 10'000, 100'000}) {
        report(sheets, fonts, labels);
    }
}

#include "support/poppler.h"

#include "support/command.h"

#include <regex>
#include <sstream>
#include <stdexcept>
#include <utility>

namespace thawslip::test_support {
namespace {

std::string decoded(std::string text) {
    const std::pair<const char*, const char*> entities[] = {
        {"&lt;", "<"}, {"&gt;", ">"}, {"&quot;", "\""}, {"&apos;", "'"}, {"&amp;", "&"}};
    for (const auto& [entity, character] : entities) {
        for (auto at = text.find(entity); at != std::string::npos; at = text.find(entity, at + 1)) {
            text.replace(at, std::string{entity}.size(), character);
        }
    }
    return text;
}

} // namespace

std::vector<Page> read_pages(const std::string& pdf) {
    const auto xml = run("pdftotext -raw -bbox " + shell_word(pdf) + " -");
    const std::regex line{R"re(<page width="([\d.]+)" height="([\d.]+)">|)re"
                          R"re(<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" )re"
                          R"re(yMax="([\d.]+)">([^<]*)</word>)re"};
    std::vector<Page> pages;
    std::istringstream lines{xml.out}; // line by line: std::regex recurses over what it reads
    std::string text;
    while (std::getline(lines, text)) {
        std::smatch m;
        if (!std::regex_search(text, m, line)) {
            continue;
        }
        if (m[1].matched) {
            pages.push_back({std::stod(m[1]), std::stod(m[2]), {}});
        } else {
            pages.back().words.push_back({decoded(m[7]), std::stod(m[3]), std::stod(m[4]),
                                          std::stod(m[5]), std::stod(m[6])});
        }
    }
    return pages;
}

std::string words_in(const Page& page, const Rect& cell) {
    std::string text;
    for (const auto& word : page.words) {
        const double x = (word.left + word.right) / 2;
        const double y = (word.top + word.bottom) / 2;
        if (x > cell.left().in_points() && x < cell.right().in_points() &&
            y > cell.top().in_points() && y < cell.bottom().in_points()) {
            text += (text.empty() ? "" : " ") + word.text;
        }
    }
    return text;
}

Raster raster_from_pgm(const std::string& bytes) {
    Raster raster;
    std::string start = bytes.substr(0, 200);
    if (const auto remark = start.find('#'); remark != std::string::npos) {
        start.erase(remark, start.find('\n', remark) - remark); // Ghostscript signs its pictures
    }
    std::istringstream header{start};
    std::string magic;
    int white = 0;
    header >> magic >> raster.width >> raster.height >> white;
    const auto count =
        static_cast<std::size_t>(raster.width) * static_cast<std::size_t>(raster.height);
    if (magic != "P5" || white != 255 || count == 0 || bytes.size() < count) {
        throw std::runtime_error{"no picture in PGM"};
    }
    raster.pixels.assign(bytes.end() - static_cast<std::ptrdiff_t>(count), bytes.end());
    return raster;
}

Raster rasterise(const std::string& pdf, int page, int dots_per_inch) {
    const auto number = std::to_string(page);
    return raster_from_pgm(run("pdftoppm -gray -r " + std::to_string(dots_per_inch) + " -f " +
                               number + " -l " + number + " " + shell_word(pdf))
                               .out);
}

} // namespace thawslip::test_support

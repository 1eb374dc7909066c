#include "mupdf.h"

#include "support/command.h"

#include <array>
#include <sstream>
#include <stdexcept>

namespace thawslip::test_support {
namespace {

/// What stands between the quotes of `name="…"`.
std::string attribute(const std::string& line, const std::string& name) {
    const auto key = " " + name + "=\"";
    const auto at = line.find(key);
    if (at == std::string::npos) {
        throw std::runtime_error{"no " + name + " in " + line};
    }
    const auto begin = at + key.size();
    return line.substr(begin, line.find('"', begin) - begin);
}

} // namespace

std::vector<ShownGlyph> trace_glyphs(const std::string& pdf, int page) {
    std::istringstream lines{
        run("mutool trace " + shell_word(pdf) + " " + std::to_string(page)).out};
    std::vector<ShownGlyph> glyphs;
    std::array<double, 6> m{};
    std::string font;
    for (std::string line; std::getline(lines, line);) {
        if (line.find("<fill_text ") != std::string::npos) {
            std::istringstream numbers{attribute(line, "transform")};
            for (auto& number : m) {
                numbers >> number;
            }
        } else if (line.find("<span ") != std::string::npos) {
            font = attribute(line, "font");
        } else if (line.find("<g ") != std::string::npos &&
                   line.find(" glyph=") !=
                       std::string::npos) { // further letters of a ligature lack it
            const int id = std::stoi(attribute(line, "glyph"));
            const double x = std::stod(attribute(line, "x"));
            const double y = std::stod(attribute(line, "y"));
            if (id >= 0) { // −1 is a further letter of a ligature
                glyphs.push_back(
                    {font, id, m[0] * x + m[2] * y + m[4], m[1] * x + m[3] * y + m[5]});
            }
        }
    }
    return glyphs;
}

} // namespace thawslip::test_support

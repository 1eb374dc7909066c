#include "app/question.h"

#include <istream>
#include <ostream>
#include <unistd.h>

namespace thawslip::app {
namespace {

std::string without_blanks_around(const std::string& line) {
    constexpr const char* blanks = " \t\r";
    const auto first = line.find_first_not_of(blanks);
    return first == std::string::npos
               ? std::string{}
               : line.substr(first, line.find_last_not_of(blanks) - first + 1);
}

} // namespace

bool somebody_is_there() {
    return isatty(STDIN_FILENO) != 0 && isatty(STDERR_FILENO) != 0;
}

Ask ask_on(std::istream& in, std::ostream& out) {
    return [&in, &out](const std::string& question) -> std::optional<std::string> {
        out << question << " " << std::flush;
        std::string line;
        if (!std::getline(in, line)) {
            out << "\n";
            return std::nullopt;
        }
        return without_blanks_around(line);
    };
}

} // namespace thawslip::app

#include "app/question.h"

#include "base/split.h"

#include <istream>
#include <ostream>
#include <unistd.h>

namespace thawslip::app {
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
        return std::string{trimmed(line)};
    };
}

} // namespace thawslip::app

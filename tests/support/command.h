#pragma once

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>
#include <sys/wait.h>
#include <vector>

namespace thawslip::test_support {

struct Outcome {
    int status = 0;  ///< exit status
    std::string out; ///< standard output
    std::string err; ///< standard error
};

inline std::string read_file(const std::filesystem::path& path) {
    std::ifstream file{path, std::ios::binary};
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

inline void write_file(const std::filesystem::path& path, const std::string& bytes) {
    std::ofstream{path, std::ios::binary} << bytes;
}

/// What its owner, its group and others may do with a file, "0600"; 0777 where it is not there.
inline unsigned mode_of(const std::filesystem::path& path) {
    return static_cast<unsigned>(std::filesystem::status(path).permissions()) & 0777U;
}

inline std::vector<std::filesystem::path> files_in(const std::filesystem::path& folder) {
    using std::filesystem::directory_iterator;
    return {directory_iterator{folder}, directory_iterator{}};
}

/// A folder that is gone when the test is.
class ScratchFolder {
public:
    ScratchFolder() {
        std::string name =
            (std::filesystem::temp_directory_path() / "thawslip-test-XXXXXX").string();
        if (::mkdtemp(name.data()) == nullptr) {
            throw std::runtime_error{"no scratch folder"};
        }
        path_ = name;
    }
    ScratchFolder(const ScratchFolder&) = delete;
    ScratchFolder& operator=(const ScratchFolder&) = delete;
    ~ScratchFolder() {
        std::error_code error;
        std::filesystem::permissions(path_, std::filesystem::perms::owner_all, error);
        std::filesystem::remove_all(path_, error);
    }
    const std::filesystem::path& path() const { return path_; }
    std::string operator/(const std::string& name) const { return (path_ / name).string(); }

private:
    std::filesystem::path path_;
};

inline std::string shell_word(const std::string& word) {
    std::string safe = "'";
    for (const char c : word) {
        safe += c == '\'' ? std::string{"'\\''"} : std::string{c};
    }
    return safe + "'";
}

/// Runs a shell command and waits for it.
inline Outcome run(const std::string& command) {
    const ScratchFolder scratch;
    const auto errors = scratch / "err";
    std::FILE* pipe = ::popen(("( " + command + " ) 2>" + shell_word(errors)).c_str(), "r");
    if (pipe == nullptr) {
        throw std::runtime_error{"cannot run " + command};
    }
    Outcome outcome;
    std::array<char, 65536> block{};
    while (const auto count = std::fread(block.data(), 1, block.size(), pipe)) {
        outcome.out.append(block.data(), count);
    }
    const int state = ::pclose(pipe);
    outcome.status = WIFEXITED(state) ? WEXITSTATUS(state) : 128 + WTERMSIG(state);
    outcome.err = read_file(errors);
    return outcome;
}

} // namespace thawslip::test_support

#pragma once

#include "support/command.h"

#include <optional>
#include <unistd.h>

namespace thawslip::test_support {

/// A way to run the program as somebody to whom things can be forbidden. Nothing is forbidden to
/// root: then it runs as nobody, and where nobody cannot reach it (a build below a home of mode
/// 0700), from a copy in the temporary folder.
class Anybody {
public:
    explicit Anybody(const std::filesystem::path& program) : program_{program} {
        if (::geteuid() == 0) {
            under_ = "setpriv --reuid=65534 --regid=65534 --clear-groups ";
            if (!runs()) {
                copy(program);
            }
        }
    }
    /// What stands before the arguments of a command, the program with it; nothing where the system
    /// does not let the program be run so.
    std::optional<std::string> command() const {
        return runs() ? std::optional{under_ + shell_word(program_.string())} : std::nullopt;
    }

private:
    /// It has to find its data as well.
    bool runs() const {
        return run("cd /; " + under_ + shell_word(program_.string()) + " stock list").status == 0;
    }
    void copy(const std::filesystem::path& program) {
        namespace fs = std::filesystem;
        copied_.emplace();
        fs::permissions(copied_->path(), fs::perms{0755});
        fs::create_directories(copied_->path() / "bin");
        program_ = copied_->path() / "bin" / program.filename();
        fs::copy_file(program, program_);
        const auto data = program.parent_path().parent_path() / "share/thawslip";
        for (const char* folder : {"fonts", "layouts"}) {
            fs::create_directories(copied_->path() / "share/thawslip" / folder);
            fs::copy(fs::canonical(data / folder), copied_->path() / "share/thawslip" / folder,
                     fs::copy_options::recursive);
        }
        run("chmod -R a+rX " + shell_word(copied_->path().string()));
    }

    std::string under_;
    std::filesystem::path program_;
    std::optional<ScratchFolder> copied_;
};

} // namespace thawslip::test_support

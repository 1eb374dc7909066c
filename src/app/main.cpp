#include "app/command_line/command_line.h"
#include "app/desk/photo_child.h"
#include "app/process.h"
#include "base/shown.h"

#include <exception>
#include <iostream>
#include <new>

int main(int argc, char** argv) {
    using thawslip::app::ExitStatus;
    try {
        thawslip::app::prepare_process();
        if (argc == 2 && argv[1] == thawslip::app::photo_child_word) {
            return static_cast<int>(thawslip::app::read_picture_for_desk());
        }
        const auto status = thawslip::app::run(argc, argv, {std::cout, std::cerr});
        std::cout.flush();
        if (!std::cout && status == ExitStatus::Done) {
            std::cerr << "error: cannot write standard output\n";
            return static_cast<int>(ExitStatus::SystemFailed);
        }
        return static_cast<int>(status);
    } catch (const std::bad_alloc&) {
        std::cerr << "error: there is not enough memory\n";
        return static_cast<int>(ExitStatus::SystemFailed);
    } catch (const std::exception& failure) {
        std::cerr << "error: " << thawslip::shown(failure.what()) << "\n";
        return static_cast<int>(ExitStatus::SystemFailed);
    }
}

#include "app/desk/once_code.h"

#include "app/desk/private_folder.h"
#include "app/desk/random_text.h"
#include "app/files/whole_file.h"

#include <filesystem>
#include <system_error>
#include <unistd.h>

namespace thawslip::app {
namespace {

std::string file_of(const std::string& folder, const std::string& code) {
    return folder + "/" + code;
}

} // namespace

std::string make_code(const std::string& folder) {
    make_private_folder(folder);
    auto code = random_text();
    write_whole_file(file_of(folder, code), {}, Readers::OwnerAlone);
    return code;
}

bool use_code(const std::string& folder, const std::string& code) {
    return is_random_text(code) && ::unlink(file_of(folder, code).c_str()) == 0;
}

void forget_codes(const std::string& folder) {
    std::error_code ignored; // they are worth nothing without a desk
    std::filesystem::remove_all(folder, ignored);
}

} // namespace thawslip::app

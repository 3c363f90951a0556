#include "exporters/fault_text.hpp"

#include <cerrno>

namespace coilwright {
namespace {

std::string reason(int error_number) {
    switch (error_number) {
    case EACCES:
    case EPERM:
        return "permission denied";
    case EROFS:
        return "the disk is read-only";
    case ENOENT:
        return "there is no such directory";
    case ENOTDIR:
        return "a part of the path is a file, not a directory";
    case EISDIR:
        return "a directory has that name";
    case ENAMETOOLONG:
        return "the name is too long";
    case ELOOP:
        return "too many links in the path";
    case ENOSPC:
        return "the disk is full";
    case EDQUOT:
        return "the disk quota is used up";
    case EFBIG:
        return "the file is larger than the system allows";
    case EMFILE:
    case ENFILE:
        return "too many files are open";
    case EIO:
        return "the disk reported an error";
    case EINVAL:
        return "the system does not allow this name here";
    default:
        return "system error " + std::to_string(error_number);
    }
}

} // namespace

std::string cannot(const std::string& what, int error_number) {
    return "cannot " + what + ": " + reason(error_number);
}

std::string shown_path(const std::string& path) {
    static constexpr char digits[] = "0123456789abcdef";
    std::string shown;
    for (const char c : path) {
        const auto byte = static_cast<unsigned char>(c);
        if (byte < 0x20 || byte == 0x7f) {
            shown += "\\x";
            shown += digits[byte >> 4];
            shown += digits[byte & 15];
        } else {
            shown += c;
        }
    }
    return shown;
}

} // namespace coilwright

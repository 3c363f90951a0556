#include "exporters/files.hpp"

#include "exporters/fault_text.hpp"
#include "exporters/held_signals.hpp"
#include "geometry/threads/side_by_side.hpp"

#include <algorithm>
#include <atomic>
#include <cerrno>
#include <charconv>
#include <csignal>
#include <dirent.h>
#include <fcntl.h>
#include <map>
#include <set>
#include <string_view>
#include <sys/stat.h>
#include <unistd.h>
#include <utility>

namespace coilwright {

std::vector<OutputFile> one_file(std::string path, std::string bytes) {
    std::vector<OutputFile> files;
    files.push_back({std::move(path), std::move(bytes)});
    return files;
}
namespace {

// An open descriptor that closes itself.
class Descriptor {
public:
    explicit Descriptor(int number = -1) : number_(number) {}
    Descriptor(Descriptor&& other) noexcept : number_(other.number_) { other.number_ = -1; }
    Descriptor& operator=(Descriptor&& other) noexcept {
        std::swap(number_, other.number_);
        return *this;
    }
    ~Descriptor() { close(); }
    bool ok() const { return number_ >= 0; }
    int get() const { return number_; }
    bool close() {
        const int number = number_;
        number_ = -1;
        return number < 0 || ::close(number) == 0;
    }

private:
    int number_;
};

constexpr const char* stopped = "stopped by a signal: nothing is written";
constexpr std::size_t longest_write = std::size_t{1} << 22; // bytes between looks for a signal

std::vector<std::string> components(const std::string& path) {
    std::vector<std::string> parts(1);
    for (const char c : path) {
        if (c == '/')
            parts.emplace_back();
        else
            parts.back() += c;
    }
    return parts;
}

// Empty: the path stays inside the output directory.
std::string path_fault(const std::string& path) {
    if (path.empty())
        return "its name is empty";
    if (path.front() == '/')
        return "its path is absolute";
    for (const std::string& part : components(path)) {
        if (part == "..")
            return "its path leaves the output directory";
        if (part.empty() || part == ".")
            return "its path has an empty part";
        if (part.find('\0') != std::string::npos)
            return "its name holds a null character";
    }
    return {};
}

// Names of files on their way: of the process that writes them, so that two runs into one directory
// do not meet.
constexpr std::string_view hidden_start = ".coilwright-";
constexpr std::string_view unfinished = ".tmp"; // new bytes, not yet in place
constexpr std::string_view earlier = ".old";    // an earlier file until the set is in place

std::string hidden_name(unsigned long count, std::string_view end) {
    return std::string(hidden_start) + std::to_string(::getpid()) + "-" + std::to_string(count) +
           std::string(end);
}

bool is_running(pid_t process) {
    return ::kill(process, 0) == 0 || errno != ESRCH;
}

// Whether a run that was killed left this file half written: its process is gone. Earlier files
// that such a run moved aside are not among them.
bool is_leftover(std::string_view name) {
    if (name.size() <= hidden_start.size() + unfinished.size() ||
        name.substr(0, hidden_start.size()) != hidden_start ||
        name.substr(name.size() - unfinished.size()) != unfinished)
        return false;
    const std::string_view numbers =
        name.substr(hidden_start.size(), name.size() - hidden_start.size() - unfinished.size());
    pid_t process = 0;
    unsigned long count = 0;
    const char* end = numbers.data() + numbers.size();
    const auto first = std::from_chars(numbers.data(), end, process);
    if (first.ec != std::errc{} || first.ptr == end || *first.ptr != '-' || process <= 0)
        return false;
    const auto second = std::from_chars(first.ptr + 1, end, count);
    return second.ec == std::errc{} && second.ptr == end && !is_running(process);
}

// Takes away what runs that were killed left in a directory. What cannot be taken stays.
void remove_leftovers(int directory) {
    const int listed = ::openat(directory, ".", O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    DIR* listing = listed < 0 ? nullptr : ::fdopendir(listed);
    if (!listing) {
        if (listed >= 0)
            ::close(listed);
        return;
    }
    std::vector<std::string> names;
    while (const dirent* entry = ::readdir(listing))
        if (is_leftover(entry->d_name))
            names.emplace_back(entry->d_name);
    ::closedir(listing);
    for (const std::string& name : names)
        ::unlinkat(directory, name.c_str(), 0);
}

// The set on its way to disk. What is not kept is taken back when the writer goes.
class SetWriter {
public:
    SetWriter(const std::filesystem::path& directory, const HeldSignals& signals)
        : directory_(directory.empty() ? "." : directory), signals_(signals) {}
    ~SetWriter() {
        if (!kept_)
            take_back();
    }
    SetWriter(const SetWriter&) = delete;
    SetWriter& operator=(const SetWriter&) = delete;

    std::string write(const std::vector<OutputFile>& files) {
        std::set<std::string> seen;
        for (const OutputFile& file : files) {
            std::string fault = path_fault(file.path);
            if (fault.empty() && !seen.insert(file.path).second)
                fault = "it is named twice";
            if (!fault.empty())
                return "cannot write " + shown_path(file.path) + ": " + fault;
        }
        if (std::string fault = open_output_directory(); !fault.empty())
            return fault;
        pending_.reserve(files.size());
        for (const OutputFile& file : files)
            if (std::string fault = find_place(file.path); !fault.empty())
                return fault;
        // Side by side: the disk's answers take longer than the copying.
        std::vector<std::string> faults(files.size());
        std::atomic<bool> failed = false;
        side_by_side(files.size(), [&](std::size_t i) {
            if (!failed)
                faults[i] = write_beside(pending_[i], files[i].bytes);
            if (!faults[i].empty())
                failed = true;
        });
        for (const std::string& fault : faults)
            if (!fault.empty())
                return fault;
        if (signals_.pending()) // a signal to this thread alone is seen here only
            return stopped;
        // From here on it takes no time worth stopping for: all of the set or nothing.
        for (Pending& file : pending_)
            if (std::string fault = put_in_place(file); !fault.empty())
                return fault;
        keep();
        return {};
    }

private:
    struct Pending {
        std::string shown;     // the path as a person reads it
        std::string name;      // within its directory
        int directory = -1;    // held open in open_
        std::string temporary; // empty once it is in place
        std::string backup;    // the earlier file's second name, if there was one
        bool placed = false;
    };

    std::string open_output_directory() {
        std::filesystem::path sofar;
        for (const auto& part : directory_) {
            sofar /= part;
            if (::mkdir(sofar.c_str(), 0777) == 0) {
                made_.push_back(sofar);
                continue;
            }
            const int why = errno; // no matter where the directory stands already
            struct stat status {};
            if (::stat(sofar.c_str(), &status) != 0)
                return cannot("create the directory " + shown_path(sofar.native()), why);
        }
        Descriptor root(::open(directory_.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
        if (!root.ok())
            return cannot("write into " + shown_path(directory_.native()), errno);
        open_.emplace("", std::move(root));
        return {};
    }

    // Opens the directory a file lies in, made where missing. Links are not followed below the
    // output directory: they could lead out of it.
    std::string open_parent(const std::string& path, const std::string& shown, int& parent) {
        parent = open_.at("").get();
        std::string within;
        std::vector<std::string> parts = components(path);
        parts.pop_back();
        for (const std::string& part : parts) {
            within += (within.empty() ? "" : "/") + part;
            if (const auto known = open_.find(within); known != open_.end()) {
                parent = known->second.get();
                continue;
            }
            const std::filesystem::path sofar = directory_ / within;
            if (::mkdirat(parent, part.c_str(), 0777) == 0)
                made_.push_back(sofar);
            else if (errno != EEXIST)
                return cannot("create the directory " + shown_path(sofar.native()), errno);
            struct stat status {};
            if (::fstatat(parent, part.c_str(), &status, AT_SYMLINK_NOFOLLOW) == 0 &&
                S_ISLNK(status.st_mode))
                return "cannot write " + shown + ": " + shown_path(sofar.native()) +
                       " is a link, and could lead out of the output directory";
            Descriptor opened(
                ::openat(parent, part.c_str(), O_RDONLY | O_DIRECTORY | O_NOFOLLOW | O_CLOEXEC));
            if (!opened.ok())
                return cannot("write into " + shown_path(sofar.native()), errno);
            parent = opened.get();
            open_.emplace(within, std::move(opened));
        }
        return {};
    }

    // Whether something has the file's name already; a fault if it must not be replaced.
    static std::string look_at_place(const Pending& file, bool& stands) {
        struct stat status {};
        stands = ::fstatat(file.directory, file.name.c_str(), &status, AT_SYMLINK_NOFOLLOW) == 0;
        if (!stands)
            return errno == ENOENT ? "" : cannot("write " + file.shown, errno);
        if (S_ISDIR(status.st_mode))
            return cannot("write " + file.shown, EISDIR);
        if (!S_ISREG(status.st_mode) && !S_ISLNK(status.st_mode))
            return "cannot write " + file.shown + ": a device or pipe has that name";
        return {};
    }

    // Looks that the place of a file can be written, and adds it to the set.
    std::string find_place(const std::string& path) {
        Pending next;
        next.shown = shown_path((directory_ / path).native());
        next.name = components(path).back();
        if (std::string fault = open_parent(path, next.shown, next.directory); !fault.empty())
            return fault;
        bool stands = false;
        if (std::string fault = look_at_place(next, stands); !fault.empty())
            return fault;
        pending_.push_back(std::move(next));
        return {};
    }

    // Writes the bytes beside the file's place, under a name of its own, down to the disk. Of
    // several files at once.
    std::string write_beside(Pending& file, const std::string& bytes) {
        Descriptor output;
        std::string temporary;
        do {
            temporary = hidden_name(++counter_, unfinished);
            output =
                Descriptor(::openat(file.directory, temporary.c_str(),
                                    O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, 0666));
        } while (!output.ok() && errno == EEXIST);
        if (!output.ok())
            return cannot("write " + file.shown, errno);
        file.temporary = std::move(temporary);
        for (std::size_t done = 0; done < bytes.size();) {
            if (signals_.pending())
                return stopped;
            const std::size_t block = std::min(bytes.size() - done, longest_write);
            const ssize_t count = ::write(output.get(), bytes.data() + done, block);
            if (count < 0 && errno != EINTR)
                return cannot("write " + file.shown, errno);
            if (count > 0)
                done += static_cast<std::size_t>(count);
        }
        if (signals_.pending())
            return stopped;
        if (::fsync(output.get()) != 0 && errno != EINVAL)
            return cannot("write " + file.shown, errno);
        if (!output.close())
            return cannot("write " + file.shown, errno);
        return {};
    }

    // Gives the new file its name. An earlier file keeps a second name until the whole set is in
    // place.
    std::string put_in_place(Pending& file) {
        const int directory = file.directory;
        bool stands = false;
        if (std::string fault = look_at_place(file, stands); !fault.empty())
            return fault;
        if (stands) {
            int linked = 0;
            do {
                file.backup = hidden_name(++counter_, earlier);
                linked = ::linkat(directory, file.name.c_str(), directory, file.backup.c_str(), 0);
            } while (linked != 0 && errno == EEXIST);
            // Where there are no second names, the earlier file is moved aside.
            if (linked != 0 &&
                ::renameat(directory, file.name.c_str(), directory, file.backup.c_str()) != 0) {
                const int why = errno;
                file.backup.clear();
                return cannot("replace " + file.shown, why);
            }
        }
        if (::renameat(directory, file.temporary.c_str(), directory, file.name.c_str()) != 0)
            return cannot("write " + file.shown, errno);
        file.placed = true;
        file.temporary.clear();
        return {};
    }

    void keep() {
        for (Pending& file : pending_) {
            if (!file.backup.empty())
                ::unlinkat(file.directory, file.backup.c_str(), 0);
            ::fsync(file.directory); // so that the new names last; not all systems can
        }
        for (const auto& [path, directory] : open_)
            remove_leftovers(directory.get());
        kept_ = true;
    }

    void take_back() {
        for (auto file = pending_.rbegin(); file != pending_.rend(); ++file) {
            const int directory = file->directory;
            if (!file->temporary.empty())
                ::unlinkat(directory, file->temporary.c_str(), 0);
            if (!file->backup.empty()) {
                ::renameat(directory, file->backup.c_str(), directory, file->name.c_str());
                // Two names of one file: the rename does nothing and leaves both.
                ::unlinkat(directory, file->backup.c_str(), 0);
            } else if (file->placed) {
                ::unlinkat(directory, file->name.c_str(), 0);
            }
        }
        pending_.clear();
        for (auto made = made_.rbegin(); made != made_.rend(); ++made)
            ::rmdir(made->c_str());
    }

    std::filesystem::path directory_;
    const HeldSignals& signals_;
    std::map<std::string, Descriptor> open_; // by path within directory_; "" is directory_ itself
    std::vector<Pending> pending_;
    std::vector<std::filesystem::path> made_;
    std::atomic<unsigned long> counter_ = 0;
    bool kept_ = false;
};

} // namespace

WriteResult write_files(const std::filesystem::path& directory,
                        const std::vector<OutputFile>& files) {
    const HeldSignals signals; // acts when the set is in place, or taken back
    SetWriter writer(directory, signals);
    return {writer.write(files)};
}

} // namespace coilwright

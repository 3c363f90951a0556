#include "exporters/files.hpp"
#include "tests/exporters/scratch.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <csignal>
#include <fstream>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

namespace coilwright {
namespace {

namespace fs = std::filesystem;
using Paths = std::vector<std::string>;

// Files of this process end at a size, as on a full disk, for as long as it lives.
class FileSizeLimit {
public:
    explicit FileSizeLimit(rlim_t bytes) {
        previous_action_ = std::signal(SIGXFSZ, SIG_IGN);
        ::getrlimit(RLIMIT_FSIZE, &previous_);
        const rlimit limited{bytes, previous_.rlim_max};
        ::setrlimit(RLIMIT_FSIZE, &limited);
    }
    ~FileSizeLimit() {
        ::setrlimit(RLIMIT_FSIZE, &previous_);
        std::signal(SIGXFSZ, previous_action_);
    }
    FileSizeLimit(const FileSizeLimit&) = delete;
    FileSizeLimit& operator=(const FileSizeLimit&) = delete;

private:
    rlimit previous_{};
    void (*previous_action_)(int);
};

/// Sends this thread a signal that waits until it is taken away again. `action` is what the program
/// would do with it: SIG_DFL, SIG_IGN.
class WaitingSignal {
public:
    WaitingSignal(int signal, void (*action)(int))
        : signal_(signal), previous_action_(std::signal(signal, action)) {
        sigemptyset(&set_);
        sigaddset(&set_, signal);
        pthread_sigmask(SIG_BLOCK, &set_, &before_);
        ::raise(signal);
    }
    ~WaitingSignal() {
        const timespec at_once{0, 0};
        sigtimedwait(&set_, nullptr, &at_once);
        pthread_sigmask(SIG_SETMASK, &before_, nullptr);
        std::signal(signal_, previous_action_);
    }
    WaitingSignal(const WaitingSignal&) = delete;
    WaitingSignal& operator=(const WaitingSignal&) = delete;

private:
    int signal_;
    void (*previous_action_)(int);
    sigset_t set_;
    sigset_t before_;
};

} // namespace

TEST_CASE("a set of files is written, with the directories it needs") {
    const ScratchDirectory scratch;
    const std::string all_bytes("\0\r\n\xff", 4);
    const fs::path out = scratch.path() / "new" / "deep";
    CHECK(write_files(out, {{"a.json", "{}"}, {"pictures/b.png", all_bytes}, {"empty", ""}}).ok());
    CHECK(all_below(out) == Paths{"a.json", "empty", "pictures", "pictures/b.png"});
    CHECK(bytes_of(out / "pictures/b.png") == all_bytes);
    CHECK(bytes_of(out / "empty").empty());
    CHECK(write_files(out, {{"a.json", "{1}"}, {"pictures/c.png", "c"}}).ok());
    CHECK(bytes_of(out / "a.json") == "{1}");
    CHECK(all_below(out) ==
          Paths{"a.json", "empty", "pictures", "pictures/b.png", "pictures/c.png"});
}

TEST_CASE("what a killed run left half written goes with the next run, and nothing else") {
    const ScratchDirectory scratch;
    const fs::path out = scratch.path() / "out";
    // A process that has been and is waited for: its number is free.
    const pid_t gone = ::fork();
    REQUIRE(gone >= 0);
    if (gone == 0)
        ::_exit(0);
    REQUIRE(::waitpid(gone, nullptr, 0) == gone);
    const auto hidden = [](pid_t process, const std::string& end) {
        return ".coilwright-" + std::to_string(process) + end;
    };
    const Paths kept{hidden(gone, "-3.old"), hidden(::getppid(), "-1.tmp"),
                     ".coilwright--1-1.tmp", ".coilwright-x.tmp",
                     hidden(gone, "-.tmp"),  hidden(gone, "-1.tmp.txt")};
    fs::create_directories(out / "pictures");
    for (const std::string& name : kept)
        std::ofstream(out / name) << name;
    std::ofstream(out / hidden(gone, "-1.tmp")) << "half";
    std::ofstream(out / "pictures" / hidden(gone, "-2.tmp")) << "half";
    REQUIRE(write_files(out, {{"a.json", "{}"}, {"pictures/b.png", "b"}}).ok());
    Paths expected = kept;
    for (const char* name : {"a.json", "pictures", "pictures/b.png"})
        expected.emplace_back(name);
    std::sort(expected.begin(), expected.end());
    CHECK(all_below(out) == expected);
}

TEST_CASE("odd names are written as they are") {
    const ScratchDirectory scratch;
    const Paths names{" two  spaces .txt", "-rf",      ".hidden",     "Kuppel – 乾燥 🏠.json",
                      "a'b\"c$(d).txt",    "\xff\xfe", "line\nbreak", std::string(255, 'n')};
    std::vector<OutputFile> files;
    for (const std::string& name : names)
        files.push_back({name, name});
    const fs::path out = scratch.path() / "out dir – ü";
    REQUIRE(write_files(out, files).fault.empty());
    for (const std::string& name : names)
        CHECK(bytes_of(out / name) == name);
    CHECK(all_below(out).size() == names.size());
}

TEST_CASE("paths that leave the output directory are refused before anything is written") {
    const ScratchDirectory scratch;
    const fs::path out = scratch.path() / "out";
    for (const std::string& bad : Paths{"../x", "a/../../x", "/tmp/coilwright-x", "", ".", "a//b",
                                        "a/.", "..", "a/", std::string("a\0b", 3)}) {
        const WriteResult result = write_files(out, {{"good", "1"}, {bad, "2"}});
        CAPTURE(bad, result.fault);
        CHECK_FALSE(result.ok());
    }
    CHECK_FALSE(write_files(out, {{"same", "1"}, {"same", "2"}}).ok());
    CHECK(all_below(scratch.path()).empty());
}

TEST_CASE("links below the output directory are not followed out of it") {
    const ScratchDirectory scratch;
    const fs::path out = scratch.path() / "out", outside = scratch.path() / "outside";
    fs::create_directories(out);
    fs::create_directories(outside);
    put_bytes(outside / "kept", "kept");
    fs::create_directory_symlink(outside, out / "pictures");
    fs::create_symlink(outside / "kept", out / "linked");
    const WriteResult refused = write_files(out, {{"first", "1"}, {"pictures/p.png", "2"}});
    CAPTURE(refused.fault);
    CHECK(refused.fault.find("is a link") != std::string::npos);
    CHECK(all_below(outside) == Paths{"kept"});
    CHECK(all_below(out) == Paths{"linked", "pictures"});
    // A link in a file's own place gives way to the file; what it pointed to stays.
    CHECK(write_files(out, {{"linked", "new"}}).ok());
    CHECK_FALSE(fs::is_symlink(out / "linked"));
    CHECK(bytes_of(outside / "kept") == "kept");
}

TEST_CASE("a link to the output directory itself is followed") {
    const ScratchDirectory scratch;
    fs::create_directories(scratch.path() / "real");
    fs::create_directory_symlink(scratch.path() / "real", scratch.path() / "out");
    CHECK(write_files(scratch.path() / "out", {{"a", "1"}}).ok());
    CHECK(bytes_of(scratch.path() / "real" / "a") == "1");
}

TEST_CASE("a failure leaves earlier files as they were, and nothing beside them") {
    const ScratchDirectory scratch;
    const fs::path out = scratch.path() / "out";
    REQUIRE(write_files(out, {{"a", "old a"}, {"z", "old z"}}).ok());
    WriteResult result;

    SECTION("a directory stands in a file's place") {
        fs::create_directories(out / "b" / "inner");
        result = write_files(out, {{"a", "new"}, {"new/n", "1"}, {"b", "2"}, {"z", "new"}});
        CHECK(result.fault.find("a directory has that name") != std::string::npos);
        fs::remove_all(out / "b");
    }
    SECTION("a file stands in a directory's place") {
        put_bytes(out / "pictures", "not a directory");
        result = write_files(out, {{"a", "new"}, {"new/n", "1"}, {"pictures/p", "2"}});
        CHECK(result.fault.find("is a file, not a directory") != std::string::npos);
        fs::remove(out / "pictures");
    }
    SECTION("a name is too long") {
        result = write_files(out, {{"a", "new"}, {"new/n", "1"}, {std::string(300, 'x'), "2"}});
        CHECK(result.fault.find("the name is too long") != std::string::npos);
    }
    SECTION("the disk is full in the middle of a file") {
        const FileSizeLimit limit(4096);
        result = write_files(out, {{"a", "new"}, {"new/n", "1"}, {"z", std::string(5000, 'x')}});
        CHECK(result.fault.find("larger than the system allows") != std::string::npos);
    }
    SECTION("a place is found taken when others are in place already") {
        // By then the set's own last file has made a directory of "n".
        result = write_files(out, {{"a", "new"}, {"first", "1"}, {"n", "2"}, {"n/n", "3"}});
        CHECK(result.fault.find("/n: a directory has that name") != std::string::npos);
    }
    SECTION("the program is told to stop") {
        for (const int signal : {SIGINT, SIGTERM, SIGHUP}) {
            const WaitingSignal waiting(signal, SIG_DFL);
            result = write_files(out, {{"a", "new"}, {"new/n", "1"}, {"z", "new"}});
            CHECK(result.fault.find("stopped by a signal") == 0);
        }
    }
    SECTION("a pipe has the name") {
        REQUIRE(::mkfifo((out / "pipe").c_str(), 0600) == 0);
        result = write_files(out, {{"a", "new"}, {"new/n", "1"}, {"pipe", "2"}});
        CHECK(result.fault.find("a device or pipe") != std::string::npos);
        fs::remove(out / "pipe");
    }
    CAPTURE(result.fault);
    CHECK_FALSE(result.ok());
    CHECK(all_below(out) == Paths{"a", "z"});
    CHECK(bytes_of(out / "a") == "old a");
    CHECK(bytes_of(out / "z") == "old z");
}

TEST_CASE("a signal that the program ignores does not stop the writing") {
    const ScratchDirectory scratch;
    const WaitingSignal waiting(SIGHUP, SIG_IGN); // as under nohup
    CHECK(write_files(scratch.path(), {{"a", "1"}}).fault == "");
    CHECK(bytes_of(scratch.path() / "a") == "1");
}

TEST_CASE("signals act again once files are written") {
    static volatile std::sig_atomic_t arrived;
    arrived = 0;
    const ScratchDirectory scratch;
    const auto before = std::signal(SIGTERM, [](int) { arrived = 1; });
    CHECK(write_files(scratch.path(), {{"a", "1"}}).ok());
    ::raise(SIGTERM);
    std::signal(SIGTERM, before);
    CHECK(arrived == 1);
}

TEST_CASE("an output directory that cannot be is refused, and none of it stays") {
    const ScratchDirectory scratch;
    put_bytes(scratch.path() / "file", "kept");
    for (const fs::path& out :
         {scratch.path() / "file", scratch.path() / "file" / "below", fs::path("/proc/coilwright"),
          fs::path("/dev/null"), fs::path("/dev/full/x"),
          scratch.path() / "a" / std::string(300, 'x')}) {
        const WriteResult result = write_files(out, {{"a", "1"}});
        CAPTURE(out, result.fault);
        CHECK(result.fault.find("cannot ") == 0);
        CHECK(result.fault.find("system error") == std::string::npos); // every reason has its words
    }
    CHECK(all_below(scratch.path()) == Paths{"file"});
    CHECK(bytes_of(scratch.path() / "file") == "kept");
}

TEST_CASE("what a fault says cannot steer a terminal") {
    const ScratchDirectory scratch;
    put_bytes(scratch.path() / "\x1b[2J", "");
    const WriteResult result = write_files(scratch.path() / "\x1b[2J", {{"a", "1"}});
    CHECK(result.fault.find("\\x1b[2J") != std::string::npos);
    CHECK(result.fault.find('\x1b') == std::string::npos);
    CHECK(write_files(scratch.path() / "\x1b[2J", {{"\x7f/..", "1"}}).fault.find('\x7f') ==
          std::string::npos);
}

TEST_CASE("the current directory serves as output directory") {
    const ScratchDirectory scratch;
    const fs::path before = fs::current_path();
    fs::current_path(scratch.path());
    const bool by_name = write_files(".", {{"a", "1"}}).ok();
    const bool by_nothing = write_files("", {{"b", "1"}}).ok();
    const bool upward =
        write_files("../" + scratch.path().filename().string() + "/sub/", {{"c", "1"}}).ok();
    fs::current_path(before);
    CHECK(by_name);
    CHECK(by_nothing);
    CHECK(upward);
    CHECK(all_below(scratch.path()) == Paths{"a", "b", "sub", "sub/c"});
}

} // namespace coilwright

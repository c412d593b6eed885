#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <set>
#include <string>
#include <vector>

// The house has four storeys, materials <- mesh <- solver <- io: what stands lower never includes what stands higher, and a
// header in a sub-folder is private to its storey. Tests and benchmarks may see all.

namespace {

namespace fs = std::filesystem;

const std::vector<std::string> storeys{"materials", "mesh", "solver", "io"};

struct Include {
    fs::path from;       // relative to the top
    std::string header;  // as written between quotes
};

std::vector<Include> quoted_includes(const std::string& folder) {
    const std::string start = "#include \"";
    std::vector<Include> found;
    const fs::path top = SWALE_SOURCE_DIR;
    for (const auto& entry : fs::recursive_directory_iterator(top / folder)) {
        const std::string kind = entry.path().extension().string();
        if (kind != ".h" && kind != ".cpp") continue;
        std::ifstream file(entry.path());
        for (std::string line; std::getline(file, line);)
            if (line.starts_with(start))
                found.push_back(
                    {fs::relative(entry.path(), top), line.substr(start.size(), line.find('"', start.size()) - start.size())});
    }
    return found;
}

// Place of a storey from the ground; -1 for any other folder.
int level(const std::string& path) {
    const auto place = std::find(storeys.begin(), storeys.end(), path.substr(0, path.find('/')));
    return place == storeys.end() ? -1 : static_cast<int>(place - storeys.begin());
}

bool is_private(const std::string& header) {
    return std::count(header.begin(), header.end(), '/') > 1;
}

}  // namespace

TEST_CASE("every quoted include of a storey starts with the name of a storey") {
    for (const std::string& storey : storeys)
        for (const Include& include : quoted_includes(storey)) {
            INFO(include.from.string() << " includes " << include.header);
            CHECK(level(include.header) >= 0);
        }
}

TEST_CASE("a lower storey never includes a higher one") {
    for (const std::string& storey : storeys)
        for (const Include& include : quoted_includes(storey)) {
            INFO(include.from.string() << " includes " << include.header);
            CHECK(level(include.header) <= level(include.from.string()));
        }
}

TEST_CASE("a header in a sub-folder is included by its own storey alone") {
    for (const std::string& storey : storeys)
        for (const Include& include : quoted_includes(storey)) {
            INFO(include.from.string() << " includes " << include.header);
            CHECK((!is_private(include.header) || level(include.header) == level(include.from.string())));
        }
}

TEST_CASE("nothing else stands at the top level") {
    const std::set<std::string> allowed{
        "CMakeLists.txt", "CMakePresets.json", "README.md", "DEVELOPERS.md", "LICENSE",    "solver",
        "mesh",           "materials",         "io",        "tests",         "benchmarks", "cases"};
    for (const auto& entry : fs::directory_iterator(SWALE_SOURCE_DIR)) {
        const std::string name = entry.path().filename().string();
        INFO(name);
        CHECK((name.starts_with(".") || name.ends_with("-result") || allowed.contains(name)));
    }
}

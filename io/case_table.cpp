#include "io/case_table.h"

#include "io/near_miss.h"

#include <algorithm>

namespace swale {
namespace {

constexpr std::size_t most_tables = 100;

}  // namespace

CaseTable::CaseTable(const TomlNode& node, std::string path, Mistakes& mistakes)
    : node_(&node), path_(std::move(path)), mistakes_(&mistakes) {}

const TomlNode* CaseTable::value(const std::string& key) {
    if (std::find(known_.begin(), known_.end(), key) == known_.end()) known_.push_back(key);
    if (node_ == nullptr) return nullptr;
    const auto found =
        std::find_if(node_->entries.begin(), node_->entries.end(), [&](const TomlEntry& e) { return e.key == key; });
    return found == node_->entries.end() ? nullptr : &found->value;
}

bool CaseTable::has(const std::string& key) {
    return value(key) != nullptr;
}

CaseTable CaseTable::empty(const std::string& key) const {
    CaseTable table(*this);
    table.node_ = nullptr;
    table.path_ = path_of(key);
    table.known_.clear();
    return table;
}

CaseTable CaseTable::table(const std::string& key, bool required) {
    const TomlNode* node = value(key);
    const std::string allowed = "a table [" + path_of(key) + "]";
    if (node == nullptr && required) reject_missing(key, allowed);
    if (node != nullptr && node->type == TomlNode::Type::table) return {*node, path_of(key), *mistakes_};
    if (node != nullptr) reject(key, "wrong type", allowed);
    return empty(key);
}

std::vector<CaseTable> CaseTable::tables(const std::string& key) {
    const TomlNode* node = value(key);
    std::vector<CaseTable> result;
    if (node == nullptr) return result;
    const auto is_table = [](const TomlNode& item) { return item.type == TomlNode::Type::table; };
    if (node->type != TomlNode::Type::array || !std::all_of(node->items.begin(), node->items.end(), is_table)) {
        reject(key, "wrong type", "tables, each headed [[" + path_of(key) + "]]");
        return result;
    }
    if (node->items.size() > most_tables) {
        reject(key, "too many tables", "up to " + std::to_string(most_tables));
        return result;
    }
    for (const TomlNode& item : node->items)
        result.emplace_back(item, path_of(key) + "[" + std::to_string(result.size() + 1) + "]", *mistakes_);
    return result;
}

void CaseTable::reject(const std::string& key, const std::string& problem, const std::string& allowed) {
    const TomlNode* node = value(key);
    if (node == nullptr) return note(node_ == nullptr ? 0 : node_->line, key, problem, "nothing", allowed);
    note(node->line, key, problem, node->written, allowed);
}

void CaseTable::reject_missing(const std::string& key, const std::string& allowed) {
    note(node_ == nullptr ? 0 : node_->line, key, "missing", "", allowed);
}

void CaseTable::finish() {
    if (node_ == nullptr) return;
    for (const TomlEntry& entry : node_->entries) {
        if (std::find(known_.begin(), known_.end(), entry.key) != known_.end()) continue;
        const std::string meant = near_miss(entry.key, known_);
        const std::string problem = "unknown key" + (meant.empty() ? "" : ", did you mean " + meant + "?");
        note(entry.value.line, on_one_line(entry.key), problem, entry.value.written, listed(known_, false));
    }
}

std::string CaseTable::path_of(const std::string& key) const {
    return path_.empty() ? key : path_ + "." + key;
}

void CaseTable::note(int line, const std::string& key, const std::string& problem, const std::string& given,
                     const std::string& allowed) {
    if (node_ != nullptr) mistakes_->add(line, path_of(key), problem, given, allowed);
}

}  // namespace swale

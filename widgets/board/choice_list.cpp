#include "widgets/board/choice_list.h"

#include <QCoreApplication>
#include <QRegularExpression>
#include <algorithm>
#include <cmath>
#include <utility>

namespace bolthole {

namespace {

QString lowered(const std::string& text) {
    return QString::fromStdString(text).toCaseFolded();
}

std::vector<std::string> wordsOf(const QString& text) {
    static const QRegularExpression between(QStringLiteral("[\\s/]+"));
    std::vector<std::string> words;
    for (const QString& word : text.toCaseFolded().split(between, Qt::SkipEmptyParts)) {
        words.push_back(word.toStdString());
    }
    return words;
}

}  // namespace

bool ChoiceList::Item::hasPlace() const {
    return assembled && !std::isnan(inverse) && std::isfinite(antiSquat);
}

bool ChoiceList::take(const BenchState& bench, const BoardState& board) {
    board_ = &board;
    Key key{board.car,     board.choices.data(), board.choices.size(), board.lengths, board.scope,
            board.present, board.complete,       bench.car.wanted,     bench.style,   board.spreadCount};
    if (key == key_) {
        return false;
    }
    if (std::exchange(key_.spreadCount, key.spreadCount) != key.spreadCount && key == key_) {
        return true;
    }
    Key wantsElse = key_;
    wantsElse.wanted = key.wanted;
    const bool sameChoices = wantsElse == key;
    key_ = std::move(key);
    version_ += sameChoices ? 0 : 1;
    if (!key_.car) {
        items_.clear();
        ranked_.clear();
        shownCount_ = 0;
        return true;
    }
    if (!sameChoices) {
        copyItems();
    }
    markWanted();
    rank();
    applyFilter();
    return true;
}

void ChoiceList::copyItems() {
    items_.resize(board_->choices.size());
    for (std::size_t at = 0; at < items_.size(); ++at) {
        const HoleChoice& choice = board_->choices[at];
        Item& item = items_[at];
        item.use = choice.use;
        item.index = choice.index;
        item.assembled = choice.assembled;
        item.inverse = choice.assembled ? inverseDistance(choice) : kAbsent;
        item.antiSquat = choice[Figure::antiSquat];
        item.problem = choice.problems != 0;
    }
}

void ChoiceList::markWanted() {
    for (std::size_t at = 0; at < items_.size(); ++at) {
        const HoleChoice* found = key_.wanted ? choice(at) : nullptr;
        items_[at].wanted = found != nullptr && isWanted(*found, *key_.wanted);
    }
}

void ChoiceList::rank() {
    const std::vector<std::size_t> order = rankChoices(board_->choices, key_.wanted);
    ranked_.resize(order.size());
    for (std::size_t place = 0; place < order.size(); ++place) {
        ranked_[place] = static_cast<std::uint32_t>(order[place]);
        items_[order[place]].rank = static_cast<std::uint32_t>(place);
    }
}

bool ChoiceList::setFilter(const ChoiceFilter& filter) {
    if (filter == filter_) {
        return false;
    }
    filter_ = filter;
    applyFilter();
    return true;
}

void ChoiceList::applyFilter() {
    const std::vector<std::string> words = wordsOf(filter_.text);
    shownCount_ = 0;
    bool changed = false;
    for (std::size_t at = 0; at < items_.size(); ++at) {
        const bool shown = passes(at, words);
        changed = changed || shown != items_[at].shown;
        items_[at].shown = shown;
        shownCount_ += shown ? 1U : 0U;
    }
    version_ += changed ? 1 : 0;
}

bool ChoiceList::passes(std::size_t at, const std::vector<std::string>& words) const {
    const Item& item = items_[at];
    if ((filter_.noProblems && item.problem) || (filter_.wantedOnly && key_.wanted && !item.wanted)) {
        return false;
    }
    return words.empty() || matches(at, words);
}

// A choice whose figures have moved on is let through until the next take().
bool ChoiceList::matches(std::size_t at, const std::vector<std::string>& words) const {
    const HoleChoice* found = choice(at);
    if (found == nullptr) {
        return true;
    }
    std::string text = holeNames(found->use, *key_.car);
    if (found->problems != 0) {
        text += '\n' + describeProblems(*found, *key_.car, key_.style.units);
    }
    const std::string lower = lowered(text).toStdString();
    return std::ranges::all_of(
        words, [&](const std::string& word) { return lower.find(word) != std::string::npos; });
}

const HoleChoice* ChoiceList::choice(std::size_t at) const {
    if (board_ == nullptr || board_->car != key_.car || at >= items_.size() || at >= board_->choices.size() ||
        board_->choices[at].use != items_[at].use) {
        return nullptr;
    }
    return &board_->choices[at];
}

const ChoiceSpread* ChoiceList::spread(std::size_t at) const {
    if (choice(at) == nullptr || items_[at].index >= board_->spreads.size()) {
        return nullptr;
    }
    const ChoiceSpread& found = board_->spreads[items_[at].index];
    return std::isnan(found.antiSquat) ? nullptr : &found;
}

std::optional<ChoiceList::Difference> ChoiceList::difference(std::size_t at) const {
    const std::optional<std::size_t> now = present();
    const ChoiceSpread* found = spread(at);
    if (!now || now == at || found == nullptr) {
        return std::nullopt;
    }
    const Difference result{items_[at].antiSquat - items_[*now].antiSquat, found->antiSquatDifference};
    return std::isfinite(result.value) && std::isfinite(result.uncertainty) ? std::optional(result)
                                                                            : std::nullopt;
}

std::optional<std::size_t> ChoiceList::find(const HoleUse& use) const {
    const auto found = std::ranges::find(items_, use, &Item::use);
    if (found == items_.end()) {
        return std::nullopt;
    }
    return static_cast<std::size_t>(found - items_.begin());
}

std::optional<std::size_t> ChoiceList::present() const {
    if (!key_.present) {
        return std::nullopt;
    }
    const auto found = std::ranges::find(items_, *key_.present, &Item::index);
    if (found == items_.end()) {
        return std::nullopt;
    }
    return static_cast<std::size_t>(found - items_.begin());
}

QString ChoiceList::nameOf(std::size_t at) const {
    const QString names = QString::fromStdString(holeNames(items_[at].use, *key_.car));
    return names.isEmpty() ? QCoreApplication::translate("HoleBoard", "current") : names;
}

}  // namespace bolthole

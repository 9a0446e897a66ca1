#include "widgets/board/combination_list.h"

#include <QCoreApplication>
#include <QRegularExpression>
#include <algorithm>
#include <cmath>
#include <functional>
#include <iterator>
#include <utility>

#include "geometry/car/starting_numbers.h"
#include "geometry/uncertainty/uncertain_inputs.h"
#include "widgets/words/starting_words.h"

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

bool isOfHole(const FieldId& id) {
    return id.field == Field::holeAt;
}

bool isPartOf(const FieldId& id, CombinationList::Basis basis) {
    const Scope scope = ruleOf(id.field).scope;
    if (scope == Scope::hole || scope == Scope::link || id.field == Field::rearTireRadius) {
        return true;
    }
    return (scope == Scope::driveline) == (basis == CombinationList::Basis::driveline) &&
           basis != CombinationList::Basis::links;
}

}  // namespace

bool CombinationList::Item::hasPlace() const {
    return assembled && !std::isnan(inverse) && std::isfinite(antiSquat);
}

bool CombinationList::take(const BenchState& bench, const BoardState& board) {
    board_ = &board;
    Key key{board.car,
            board.combinations.data(),
            board.combinations.size(),
            board.lengths,
            board.scope,
            board.present,
            board.complete,
            bench.car.target,
            bench.style,
            board.uncertaintyCount};
    if (key == key_) {
        return false;
    }
    if (std::exchange(key_.uncertaintyCount, key.uncertaintyCount) != key.uncertaintyCount && key == key_) {
        return true;
    }
    Key wantsElse = key_;
    wantsElse.target = key.target;
    const bool sameCombinations = wantsElse == key;
    key_ = std::move(key);
    version_ += sameCombinations ? 0 : 1;
    if (!key_.car) {
        items_.clear();
        ranked_.clear();
        shownCount_ = 0;
        findStarts();
        return true;
    }
    if (!sameCombinations) {
        copyItems();
        findStarts();
    }
    markRequested();
    rank();
    applyFilter();
    return true;
}

void CombinationList::copyItems() {
    items_.resize(board_->combinations.size());
    for (std::size_t at = 0; at < items_.size(); ++at) {
        const HoleCombination& combination = board_->combinations[at];
        Item& item = items_[at];
        item.use = combination.use;
        item.index = combination.index;
        item.assembled = combination.assembled;
        item.inverse = combination.assembled ? inverseDistance(combination) : kAbsent;
        item.antiSquat = combination[Figure::antiSquat];
        item.problem = combination.problems != 0;
    }
}

// Once a car: asked anew for each combination it would cost more than the combination.
void CombinationList::findStarts() {
    anyRests_ = false;
    starts_.clear();
    startingHoles_.clear();
    if (!key_.car) {
        return;
    }
    std::ranges::copy_if(startsUsed(*key_.car), std::back_inserter(starts_), std::not_fn(isOfHole));
    std::ranges::copy_if(startingNumbers(*key_.car), std::back_inserter(startingHoles_), isOfHole);
    for (std::size_t at = 0; at < items_.size() && !anyRests_; ++at) {
        anyRests_ = restsOnStarts(at, Basis::weights);
    }
}

bool CombinationList::restsOnStarts(std::size_t at, Basis basis) const {
    return std::ranges::any_of(starts_, [&](const FieldId& id) { return isPartOf(id, basis); }) ||
           std::ranges::any_of(startingHoles_, [&](const FieldId& id) {
               return items_[at].use.of(id.link, id.end) == id.hole;
           });
}

QString CombinationList::startingWords(std::size_t at, Basis basis) const {
    std::vector<FieldId> starts = startsUsed(*key_.car, items_[at].use);
    std::erase_if(starts, [&](const FieldId& id) { return !isPartOf(id, basis); });
    return bolthole::startingWords(*key_.car, starts);
}

void CombinationList::markRequested() {
    for (std::size_t at = 0; at < items_.size(); ++at) {
        const HoleCombination* found = key_.target ? combination(at) : nullptr;
        items_[at].target = found != nullptr && meetsTarget(*found, *key_.target);
    }
}

void CombinationList::rank() {
    const std::vector<std::size_t> order = rankCombinations(board_->combinations, key_.target);
    ranked_.resize(order.size());
    for (std::size_t place = 0; place < order.size(); ++place) {
        ranked_[place] = static_cast<std::uint32_t>(order[place]);
        items_[order[place]].rank = static_cast<std::uint32_t>(place);
    }
}

bool CombinationList::setFilter(const CombinationFilter& filter) {
    if (filter == filter_) {
        return false;
    }
    filter_ = filter;
    applyFilter();
    return true;
}

void CombinationList::applyFilter() {
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

bool CombinationList::passes(std::size_t at, const std::vector<std::string>& words) const {
    const Item& item = items_[at];
    if ((filter_.noProblems && item.problem) || (filter_.targetOnly && key_.target && !item.target)) {
        return false;
    }
    return words.empty() || matches(at, words);
}

// A combination whose figures have moved on is let through until the next take().
bool CombinationList::matches(std::size_t at, const std::vector<std::string>& words) const {
    const HoleCombination* found = combination(at);
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

const HoleCombination* CombinationList::combination(std::size_t at) const {
    if (board_ == nullptr || board_->car != key_.car || at >= items_.size() ||
        at >= board_->combinations.size() || board_->combinations[at].use != items_[at].use) {
        return nullptr;
    }
    return &board_->combinations[at];
}

const CombinationUncertainty* CombinationList::uncertainty(std::size_t at) const {
    if (combination(at) == nullptr || items_[at].index >= board_->uncertainties.size()) {
        return nullptr;
    }
    const CombinationUncertainty& found = board_->uncertainties[items_[at].index];
    return std::isnan(found.antiSquat) ? nullptr : &found;
}

std::optional<CombinationList::Difference> CombinationList::difference(std::size_t at) const {
    const std::optional<std::size_t> now = present();
    const CombinationUncertainty* found = uncertainty(at);
    if (!now || now == at || found == nullptr) {
        return std::nullopt;
    }
    const Difference result{items_[at].antiSquat - items_[*now].antiSquat, found->antiSquatDifference};
    return std::isfinite(result.value) && std::isfinite(result.uncertainty) ? std::optional(result)
                                                                            : std::nullopt;
}

std::optional<std::size_t> CombinationList::find(const HoleUse& use) const {
    const auto found = std::ranges::find(items_, use, &Item::use);
    if (found == items_.end()) {
        return std::nullopt;
    }
    return static_cast<std::size_t>(found - items_.begin());
}

std::optional<std::size_t> CombinationList::present() const {
    if (!key_.present) {
        return std::nullopt;
    }
    const auto found = std::ranges::find(items_, *key_.present, &Item::index);
    if (found == items_.end()) {
        return std::nullopt;
    }
    return static_cast<std::size_t>(found - items_.begin());
}

QString CombinationList::nameOf(std::size_t at) const {
    const QString names = QString::fromStdString(holeNames(items_[at].use, *key_.car));
    return names.isEmpty() ? QCoreApplication::translate("HoleBoard", "current") : names;
}

}  // namespace bolthole

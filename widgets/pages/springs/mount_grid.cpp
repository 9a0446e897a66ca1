#include "widgets/pages/springs/mount_grid.h"

#include <algorithm>
#include <iterator>

#include "geometry/car/starting_numbers.h"
#include "geometry/edits/next_hole.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/field_words.h"
#include "widgets/words/spring_words.h"

namespace bolthole {

MountGrid::MountGrid(SheetHub& hub, int item, End end, QWidget* parent)
    : HoleGrid(hub, parent), item_(item), end_(end) {
    build({QStringLiteral("%1, %2").arg(springName(hub.state().car, item_),
                                        mountTitle(part().kind, end_).toLower()),
           part().side, tr("Bolt the part into this hole.")});
    refresh();
}

const SuspensionPart& MountGrid::part() const {
    return hub().state().car.springs[static_cast<std::size_t>(item_)];
}

FieldId MountGrid::fieldOf(int hole) const {
    return {.field = Field::mountAt, .end = end_, .hole = hole, .axis = 0, .item = item_};
}

void MountGrid::ask(const Bracket& bracket) {
    SuspensionPart changed = part();
    changed.bracket(end_) = bracket;
    hub().request(ChangeSpring{item_, changed});
}

void MountGrid::useHole(int hole) {
    Bracket changed = bracket();
    changed.use = hole;
    ask(changed);
}

void MountGrid::renameHole(int hole, const std::string& name) {
    Bracket changed = bracket();
    changed.holes[static_cast<std::size_t>(hole)].name = name;
    ask(changed);
}

void MountGrid::addHole() {
    SuspensionPart changed = part();
    Bracket& mount = changed.bracket(end_);
    Hole added = nextHole(mount, hub().state().style.units);
    startFrom(added, Field::mountAt);
    mount.holes.push_back(added);
    hub().request(ChangeSpring{item_, changed}, fieldOf(static_cast<int>(mount.holes.size()) - 1));
}

// The bolt stays in its hole; if that is the one removed it goes to the next, or to the last.
void MountGrid::removeHole(int hole) {
    SuspensionPart changed = part();
    Bracket& mount = changed.bracket(end_);
    mount.holes.erase(std::next(mount.holes.begin(), hole));
    const int last = static_cast<int>(mount.holes.size()) - 1;
    mount.use = std::min(mount.use > hole ? mount.use - 1 : mount.use, last);
    hub().request(ChangeSpring{item_, changed}, fieldOf(std::max(0, hole - 1)));
}

void MountGrid::refresh() {
    title()->showText(QStringLiteral("%1, %2").arg(mountTitle(part().kind, end_),
                                                   unitText(Quantity::length, hub().state().style.units)));
    if (const QString shown = springName(hub().state().car, item_); shown != shownPart_) {
        shownPart_ = shown;
        forgetNames();
    }
    refreshRows(Role::lower);
}

}  // namespace bolthole

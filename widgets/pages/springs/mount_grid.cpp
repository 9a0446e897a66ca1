#include "widgets/pages/springs/mount_grid.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QMenu>
#include <algorithm>
#include <iterator>

#include "geometry/edits/next_hole.h"
#include "widgets/fields/bracket_grid.h"
#include "widgets/kit/number_field.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/field_words.h"
#include "widgets/words/spring_words.h"

namespace bolthole {

MountGrid::MountGrid(SheetHub& hub, int item, End end, QWidget* parent)
    : QWidget(parent), hub_(hub), item_(item), end_(end) {
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 2, 0, 0);
    grid->setHorizontalSpacing(3);
    grid->setVerticalSpacing(3);
    for (int column = 1; column <= 4; ++column) {
        grid->setColumnStretch(column, 4);
    }
    addHeading(grid);
    for (int hole = 0; hole < static_cast<int>(bracket().holes.size()); ++hole) {
        addRow(grid, hole);
    }
    refresh();
}

const SuspensionPart& MountGrid::part() const {
    return hub_.state().car.springs[static_cast<std::size_t>(item_)];
}

FieldId MountGrid::fieldOf(int hole) const {
    return {.field = Field::mountAt, .end = end_, .hole = hole, .axis = 0, .item = item_};
}

void MountGrid::addHeading(QGridLayout* grid) {
    auto* line = new QHBoxLayout;
    line->setSpacing(2);
    title_ = new ToneLabel(ToneLabel::Tone::muted, QString(), this);
    title_->setContentsMargins(4, 0, 0, 0);
    line->addWidget(title_, 1);
    const QString of = QStringLiteral("%1, %2").arg(springName(hub_.state().car, item_),
                                                    mountTitle(part().kind, end_).toLower());
    QAbstractButton* add =
        smallButton(QStringLiteral("+"), tr("Add a hole: %1").arg(of),
                    tr("Add a hole next to the last one. The bolt stays where it is."), this);
    add->setEnabled(bracket().holes.size() < kMaxHoles);
    connect(add, &QAbstractButton::clicked, this, &MountGrid::addHole);
    QAbstractButton* remove = smallButton(QStringLiteral("−"), tr("Remove a hole: %1").arg(of),
                                          tr("Remove a hole; pick which one from the list."), this);
    keepPlace(remove, bracket().holes.size() > 1);
    auto* menu = new QMenu(remove);
    connect(menu, &QMenu::aboutToShow, this, [this, menu] { fillRemoveMenu(menu); });
    connect(remove, &QAbstractButton::clicked, this,
            [remove, menu] { menu->popup(remove->mapToGlobal(QPoint(0, remove->height()))); });
    line->addWidget(add);
    line->addWidget(remove);
    grid->addLayout(line, 0, 0, 1, 5);
    addPointHeadings(grid, 1, 2, part().side, this);
}

void MountGrid::addRow(QGridLayout* grid, int hole) {
    const int row = 2 + 2 * hole;
    auto* mark = new HoleMark(this);
    mark->setToolTip(wrappedToolTip(tr("Bolt the part into this hole.")));
    connect(mark, &QAbstractButton::clicked, this, [this, hole] {
        if (bracket().use != hole) {
            Bracket changed = bracket();
            changed.use = hole;
            ask(changed);
        }
    });
    grid->addWidget(mark, row, 0);
    auto* name = new NameField(this);
    name->setProperty("nameLike", true);
    name->setMinimumWidth(24);
    name->setToolTip(wrappedToolTip(tr("The hole's name, as it is spoken of in the shop.")));
    connect(name, &NameField::renamed, this, [this, hole](const std::string& typed) {
        Bracket changed = bracket();
        changed.holes[static_cast<std::size_t>(hole)].name = typed;
        ask(changed);
    });
    grid->addWidget(name, row, 1);
    addPointFields(hub_, grid, row, 2, fieldOf(hole), this);
    rows_.push_back({mark, name});
}

void MountGrid::ask(const Bracket& bracket) {
    SuspensionPart changed = part();
    changed.bracket(end_) = bracket;
    hub_.request(ChangeSpring{item_, changed});
}

void MountGrid::addHole() {
    SuspensionPart changed = part();
    Bracket& mount = changed.bracket(end_);
    mount.holes.push_back(nextHole(mount, hub_.state().style.units));
    hub_.request(ChangeSpring{item_, changed}, fieldOf(static_cast<int>(mount.holes.size()) - 1));
}

void MountGrid::fillRemoveMenu(QMenu* menu) {
    menu->clear();
    for (int hole = 0; hole < static_cast<int>(bracket().holes.size()); ++hole) {
        const QString in = bracket().use == hole ? tr(" (current)") : QString();
        QString name = holeName(bracket(), hole);
        name.replace(u'&', QStringLiteral("&&"));
        connect(menu->addAction(tr("Remove '%1'%2").arg(name, in)), &QAction::triggered, this,
                [this, hole] { removeHole(hole); });
    }
}

// The bolt stays in its hole; if that is the one removed it goes to the next, or to the last.
void MountGrid::removeHole(int hole) {
    SuspensionPart changed = part();
    Bracket& mount = changed.bracket(end_);
    mount.holes.erase(std::next(mount.holes.begin(), hole));
    const int last = static_cast<int>(mount.holes.size()) - 1;
    mount.use = std::min(mount.use > hole ? mount.use - 1 : mount.use, last);
    hub_.request(ChangeSpring{item_, changed}, fieldOf(std::max(0, hole - 1)));
}

void MountGrid::refresh() {
    title_->showText(QStringLiteral("%1, %2").arg(mountTitle(part().kind, end_),
                                                  unitText(Quantity::length, hub_.state().style.units)));
    for (std::size_t hole = 0; hole < rows_.size(); ++hole) {
        Row& row = rows_[hole];
        row.mark->showState(bracket().use == static_cast<int>(hole), Role::lower);
        row.name->showName(bracket().holes[hole].name);
        const QString spoken = wordsFor(hub_.state().car, fieldOf(static_cast<int>(hole))).name;
        const QString place = spoken.left(spoken.lastIndexOf(u','));
        row.mark->setAccessibleName(tr("%1, bolted here").arg(place));
        row.name->setAccessibleName(tr("%1, name").arg(place));
    }
}

}  // namespace bolthole

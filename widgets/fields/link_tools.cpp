#include "widgets/fields/link_tools.h"

#include <QActionGroup>
#include <QHBoxLayout>
#include <QMenu>
#include <algorithm>

#include "geometry/edits/starting_link.h"
#include "widgets/kit/theme.h"
#include "widgets/words/field_words.h"

namespace bolthole {

namespace {

QString kindName(LinkKind kind) {
    switch (kind) {
        case LinkKind::rod:
            return LinkTools::tr("link");
        case LinkKind::pivot:
            return LinkTools::tr("ladder bar");
        case LinkKind::slider:
            return LinkTools::tr("torque arm");
        case LinkKind::guide:
            break;
    }
    return LinkTools::tr("Watts guide");
}

/// A menu of which one entry is checked.
class OneOf {
  public:
    OneOf(QMenu* parent, const QString& title)
        : menu_(parent->addMenu(title)), group_(new QActionGroup(menu_)) {
        menu_->setToolTipsVisible(true);
    }
    QAction* add(const QString& words, bool checked, const QString& tip = QString()) {
        QAction* action = menu_->addAction(words);
        action->setCheckable(true);
        action->setChecked(checked);
        action->setToolTip(tip);
        group_->addAction(action);
        return action;
    }

  private:
    QMenu* menu_;
    QActionGroup* group_;
};

}  // namespace

LinkTools::LinkTools(SheetHub& hub, int link, QWidget* parent) : QWidget(parent), hub_(hub), link_(link) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(4, 0, 0, 0);
    row->setSpacing(2);
    words_ = new ToneLabel(ToneLabel::Tone::muted, QString(), this);
    row->addWidget(words_, 1);
    apart_ = smallButton(tr("Split left and right"), QString(),
                         tr("Makes two links of the pair, left and right, that can then have holes and a "
                            "length each of their own."),
                         this);
    join_ = smallButton(tr("Mirror"), QString(),
                        tr("Makes a mirrored pair of the left and the right link again; both get the points "
                           "and length of this one."),
                        this);
    change_ = smallButton(tr("Change ▾"), QString(), tr("Another kind, side or role."), this);
    remove_ = smallButton(tr("Remove"), QString(),
                          tr("Takes the link and its numbers out of the car. Undo brings it back."), this);
    for (QAbstractButton* button : {apart_, join_, change_, remove_}) {
        row->addWidget(button);
    }
    auto* menu = new QMenu(change_);
    connect(menu, &QMenu::aboutToShow, this, [this, menu] { fillMenu(menu); });
    connect(change_, &QAbstractButton::clicked, this,
            [this, menu] { menu->popup(change_->mapToGlobal(QPoint(0, change_->height()))); });
    connect(apart_, &QAbstractButton::clicked, this, &LinkTools::setApart);
    connect(join_, &QAbstractButton::clicked, this, &LinkTools::join);
    connect(remove_, &QAbstractButton::clicked, this, &LinkTools::remove);
}

const Link& LinkTools::link() const {
    return hub_.state().car.links[static_cast<std::size_t>(link_)];
}

void LinkTools::refresh() {
    const Car& car = hub_.state().car;
    words_->showText(kindName(link().kind));
    apart_->setVisible(link().side == Side::both);
    join_->setVisible(isHalfOfPair(car, link_));
    const QString side = link().side == Side::left    ? tr("left ")
                         : link().side == Side::right ? tr("right ")
                                                      : QString();
    const QString name = side + linkName(car, link_);
    if (const QString spoken = tr("%1: remove the link").arg(name); remove_->accessibleName() != spoken) {
        apart_->setAccessibleName(tr("%1: set left and right apart").arg(name));
        join_->setAccessibleName(tr("%1: join left and right").arg(name));
        change_->setAccessibleName(tr("%1: change kind, side or role").arg(name));
        remove_->setAccessibleName(spoken);
    }
}

void LinkTools::fillMenu(QMenu* menu) {
    for (QMenu* old : menu->findChildren<QMenu*>(Qt::FindDirectChildrenOnly)) {
        old->deleteLater();
    }
    menu->clear();
    addKinds(menu);
    addSides(menu);
    addRoles(menu);
}

void LinkTools::addKinds(QMenu* menu) {
    OneOf kinds(menu, tr("&Kind"));
    for (const LinkKind kind : {LinkKind::rod, LinkKind::pivot, LinkKind::slider, LinkKind::guide}) {
        QAction* action = kinds.add(kindName(kind), link().kind == kind, kindWords(kind));
        connect(action, &QAction::triggered, this, [this, kind] { turnInto(kind); });
    }
}

void LinkTools::turnInto(LinkKind kind) {
    changeTo(turnedInto(hub_.state().car, link(), kind));
}

void LinkTools::addSides(QMenu* menu) {
    OneOf sides(menu, tr("&Side"));
    const std::pair<Side, QString> words[] = {{Side::both, tr("both, mirrored")},
                                              {Side::left, tr("left")},
                                              {Side::right, tr("right")},
                                              {Side::center, tr("center")}};
    for (const auto& [side, name] : words) {
        QAction* action = sides.add(name, link().side == side);
        connect(action, &QAction::triggered, this,
                [this, to = side] { changeTo(movedTo(hub_.state().car, link(), to)); });
    }
}

void LinkTools::addRoles(QMenu* menu) {
    OneOf roles(menu, tr("&Role"));
    const std::pair<std::optional<Role>, QString> words[] = {{std::nullopt, tr("found from its holes")},
                                                             {Role::lower, tr("lower")},
                                                             {Role::upper, tr("upper")},
                                                             {Role::crosswise, tr("crosswise")}};
    for (const auto& [role, name] : words) {
        QAction* action = roles.add(name, link().role == role);
        connect(action, &QAction::triggered, this, [this, to = role] {
            Link changed = link();
            changed.role = to;
            changeTo(changed);
        });
    }
}

void LinkTools::changeTo(const Link& changed) {
    if (!(changed == link())) {
        hub_.request(ChangeLink{link_, changed}, holeField(link_, End::chassis, 0, 0));
    }
}

void LinkTools::setApart() {
    hub_.linkComes(link_ + 1);
    hub_.request(SplitLink{link_}, holeField(link_, End::chassis, 0, 0));
}

void LinkTools::join() {
    const std::vector<Link>& links = hub_.state().car.links;
    const auto partner = std::ranges::find_if(links, [this](const Link& other) {
        return other.side == Side::right && other.name == link().name && other.kind == link().kind;
    });
    hub_.linkGoes(static_cast<int>(partner - links.begin()));
    const int left = link().side == Side::left ? link_ : std::max(0, link_ - 1);
    hub_.request(JoinLinks{link_}, holeField(left, End::chassis, 0, 0));
}

void LinkTools::remove() {
    const bool last = hub_.state().car.links.size() == 1;
    const int next = std::max(0, link_ - 1);
    hub_.linkGoes(link_);
    hub_.request(RemoveLink{link_}, last ? carField(Field::wheelbase) : holeField(next, End::chassis, 0, 0));
}

AddLinkButton::AddLinkButton(SheetHub& hub, QWidget* parent)
    : QPushButton(tr("Add a link ▾"), parent), hub_(hub) {
    setAccessibleName(tr("Add a link"));
    setToolTip(
        wrappedToolTip(tr("Puts in a link with its points where such links usually stand. They are "
                          "not your car's: measure each one.")));
    setEnabled(hub.state().car.links.size() < kMaxLinks);
    auto* menu = new QMenu(this);
    const std::pair<LinkPattern, QString> patterns[] = {
        {LinkPattern::lower, tr("&Lower links, a pair")},
        {LinkPattern::parallelUpper, tr("&Upper links, a pair along the car")},
        {LinkPattern::splayedUpper, tr("U&pper links, a pair that runs together")},
        {LinkPattern::thirdLink, tr("T&hird link, one upper in the middle")},
        {LinkPattern::ladderBar, tr("La&dder bars, a pair")},
        {LinkPattern::torqueArm, tr("Torque &arm")},
        {LinkPattern::trackBar, tr("&Track bar")},
        {LinkPattern::wattsGuide, tr("&Watts guide")}};
    for (const auto& [pattern, name] : patterns) {
        connect(menu->addAction(name), &QAction::triggered, this,
                [this, which = static_cast<int>(pattern)] { add(which); });
    }
    connect(this, &QAbstractButton::clicked, this,
            [this, menu] { menu->popup(mapToGlobal(QPoint(0, height()))); });
}

void AddLinkButton::add(int pattern) {
    const Car& car = hub_.state().car;
    const auto place = static_cast<int>(car.links.size());
    const Link link = startingLink(car, static_cast<LinkPattern>(pattern));
    hub_.request(AddLink{link}, holeField(place, End::chassis, 0, 0));
}

}  // namespace bolthole

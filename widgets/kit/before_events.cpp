#include "widgets/kit/before_events.h"

#include <QCoreApplication>
#include <QObject>

#include "geometry/units/upper_vectors.h"

namespace bolthole {

namespace {

class BeforeEvents : public QObject {
  public:
    explicit BeforeEvents(QCoreApplication* application) : QObject(application) {
        setObjectName(QStringLiteral("beforeEvents"));
        application->installEventFilter(this);
    }
    bool eventFilter(QObject* /*watched*/, QEvent* /*event*/) override {
        clearUpperVectors();
        return false;
    }
};

}  // namespace

void clearUpperVectorsBeforeEvents() {
    QCoreApplication* application = QCoreApplication::instance();
    if (application->findChild<QObject*>(QStringLiteral("beforeEvents"), Qt::FindDirectChildrenOnly) ==
        nullptr) {
        new BeforeEvents(application);
    }
}

}  // namespace bolthole

#include "app/papers/quiet_toolkit.h"

namespace bolthole {

namespace {

void swallow(QtMsgType /*type*/, const QMessageLogContext& /*context*/, const QString& /*message*/) {}

}  // namespace

QuietToolkit::QuietToolkit() : formerHandler_(qInstallMessageHandler(swallow)) {
    if (QCoreApplication::instance() == nullptr) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
        application_ = std::make_unique<QGuiApplication>(count_, words_.data());
    }
}

QuietToolkit::~QuietToolkit() {
    application_.reset();
    qInstallMessageHandler(formerHandler_);
}

}  // namespace bolthole

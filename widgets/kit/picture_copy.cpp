#include "widgets/kit/picture_copy.h"

#include <QAction>
#include <QClipboard>
#include <QFileDialog>
#include <QGuiApplication>
#include <QImage>
#include <QMessageBox>
#include <QMimeData>
#include <QSaveFile>
#include <QWidget>

#include "widgets/kit/translation.h"

namespace bolthole {

namespace {

QImage imageOf(QWidget& picture) {
    QImage image(kTakenPixels * picture.size(), QImage::Format_RGB32);
    image.setDevicePixelRatio(kTakenPixels);
    image.fill(picture.palette().color(QPalette::Window));
    picture.render(&image);
    return image;
}

void askSavePicture(QWidget& picture) {
    const QString name = picture.accessibleName().isEmpty() ? tr("picture") : picture.accessibleName();
    const QString fileName = QFileDialog::getSaveFileName(
        &picture, tr("Save picture"), name + QStringLiteral(".png"), tr("Pictures (*.png)"));
    if (!fileName.isEmpty() && !savePicture(picture, fileName)) {
        QMessageBox::warning(&picture, tr("Save picture"), tr("%1 could not be written.").arg(fileName));
    }
}

}  // namespace

std::unique_ptr<QMimeData> copyOf(QWidget& picture) {
    auto taken = std::make_unique<QMimeData>();
    taken->setImageData(imageOf(picture));
    QStringList words{picture.accessibleName(), picture.accessibleDescription()};
    words.removeAll(QString());
    taken->setText(words.join('\n'));
    return taken;
}

bool savePicture(QWidget& picture, const QString& fileName) {
    QSaveFile file(fileName);
    return file.open(QIODevice::WriteOnly) && imageOf(picture).save(&file, "PNG") && file.commit();
}

void offerPicture(QWidget& picture) {
    auto* copy = new QAction(tr("&Copy picture"), &picture);
    copy->setShortcut(QKeySequence::Copy);
    copy->setShortcutContext(Qt::WidgetWithChildrenShortcut);
    QObject::connect(copy, &QAction::triggered, &picture,
                     [&picture] { QGuiApplication::clipboard()->setMimeData(copyOf(picture).release()); });
    auto* save = new QAction(tr("&Save picture as PNG…"), &picture);
    QObject::connect(save, &QAction::triggered, &picture, [&picture] { askSavePicture(picture); });
    picture.addActions({copy, save});
    picture.setContextMenuPolicy(Qt::ActionsContextMenu);
}

}  // namespace bolthole

// Saving: whole or not at all, and never over what another program wrote without asking.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/resource.h>

#include <QDir>
#include <QFile>
#include <QTemporaryDir>
#include <csignal>
#include <fstream>

#include "app/document/document.h"
#include "tests/support/run_command.h"

namespace bolthole {
namespace {

using test::bytesOf;

class Saving : public testing::Test {
  protected:
    void SetUp() override {
        file_ = folder_.filePath(QStringLiteral("car.bolt.json"));
        ASSERT_TRUE(QFile::copy(QString::fromStdString(test::kWagonFile), file_));
        ASSERT_EQ(document_.open(file_), QString());
        setWheelbase(3.0);
    }
    void setWheelbase(double wheelbase) {
        ASSERT_EQ(document_.apply(SetNumber{{.field = Field::wheelbase}, wheelbase}, EditPhase::whole, {}),
                  "");
    }
    [[nodiscard]] std::string bytes() const { return bytesOf(file_.toStdString()); }
    void write(const std::string& bytes) const {
        std::ofstream(file_.toStdString(), std::ios::binary) << bytes;
    }

    QTemporaryDir folder_;
    QString file_;
    Document document_;
};

TEST_F(Saving, AFileChangedElsewhereIsNotReplacedUnasked) {
    const std::string theirs = bytes() + "\n";
    write(theirs);
    EXPECT_TRUE(document_.isChangedElsewhere());
    EXPECT_EQ(document_.save(file_).outcome, SaveResult::Outcome::changedElsewhere);
    EXPECT_EQ(bytes(), theirs);
    EXPECT_TRUE(document_.isEdited());
}

TEST_F(Saving, ReplacedItIsKeptBesideTheNewOne) {
    const std::string theirs = bytes() + "\n";
    for (const char* name :
         {"car (as changed elsewhere).bolt.json", "car (as changed elsewhere 2).bolt.json"}) {
        write(theirs);
        const SaveResult result = document_.save(file_, true);
        ASSERT_TRUE(result.saved()) << result.reason.toStdString();
        EXPECT_EQ(QFileInfo(result.reason).fileName(), name);
        EXPECT_EQ(bytesOf(result.reason.toStdString()), theirs);
        EXPECT_EQ(readCarFile(file_.toStdString()).loaded->car, document_.car());
        EXPECT_FALSE(document_.isEdited());
        EXPECT_FALSE(document_.isChangedElsewhere());
    }
}

TEST_F(Saving, TouchedButTheSameIsNoChange) {
    write(bytes());
    EXPECT_FALSE(document_.isChangedElsewhere());
    EXPECT_TRUE(document_.save(file_).saved());
}

// Saving looks at every byte, whatever time and size say.
TEST_F(Saving, AChangeThatKeepsTimeAndSizeIsNoticed) {
    ASSERT_TRUE(document_.save(file_).saved());
    const QDateTime time = QFileInfo(file_).lastModified();
    std::string theirs = bytes();
    theirs[theirs.find("3000")] = '2';
    write(theirs);
    QFile file(file_);
    ASSERT_TRUE(file.open(QIODevice::ReadWrite));
    ASSERT_TRUE(file.setFileTime(time, QFileDevice::FileModificationTime));
    file.close();
    EXPECT_EQ(document_.save(file_).outcome, SaveResult::Outcome::changedElsewhere);
    EXPECT_EQ(bytes(), theirs);
}

// What can't be kept is not replaced, even when that was asked for.
TEST_F(Saving, WhatCannotBeKeptIsNotReplaced) {
    std::ofstream(file_.toStdString(), std::ios::binary) << std::string(kMaxFileBytes + 1, ' ');
    const SaveResult result = document_.save(file_, true);
    EXPECT_EQ(result.outcome, SaveResult::Outcome::failed);
    EXPECT_EQ(result.reason, "can't be kept before it is replaced: larger than 16000000 bytes");
    EXPECT_EQ(QFileInfo(file_).size(), static_cast<qint64>(kMaxFileBytes) + 1);
}

TEST_F(Saving, AFileThatVanishedIsWrittenAnew) {
    ASSERT_TRUE(QFile::remove(file_));
    EXPECT_FALSE(document_.isChangedElsewhere());
    EXPECT_TRUE(document_.save(file_).saved());
    EXPECT_EQ(readCarFile(file_.toStdString()).loaded->car, document_.car());
}

TEST_F(Saving, AVanishedFolderIsSaidAndNothingIsLost) {
    const QString inside = folder_.filePath(QStringLiteral("gone/car.bolt.json"));
    ASSERT_TRUE(QDir(folder_.path()).mkdir(QStringLiteral("gone")));
    ASSERT_TRUE(document_.save(inside).saved());
    setWheelbase(3.1);
    ASSERT_TRUE(QDir(folder_.filePath(QStringLiteral("gone"))).removeRecursively());
    const SaveResult result = document_.save(inside);
    EXPECT_EQ(result.outcome, SaveResult::Outcome::failed);
    EXPECT_EQ(result.reason, "cannot be written: No such file or directory");
    EXPECT_TRUE(document_.isEdited());
    EXPECT_EQ(document_.car().wheelbase, 3.1);
}

// A limit on the size of files stands in for a full disk.
TEST_F(Saving, OnAFullDiskTheOldFileStays) {
    const std::string old = bytes();
    std::signal(SIGXFSZ, SIG_IGN);
    rlimit normal{};
    ASSERT_EQ(getrlimit(RLIMIT_FSIZE, &normal), 0);
    for (const rlim_t size : {0U, 1U, 700U, 1500U}) {
        rlimit full = normal;
        full.rlim_cur = size;
        ASSERT_EQ(setrlimit(RLIMIT_FSIZE, &full), 0);
        const SaveResult result = document_.save(file_);
        ASSERT_EQ(setrlimit(RLIMIT_FSIZE, &normal), 0);
        EXPECT_EQ(result.outcome, SaveResult::Outcome::failed) << size;
        EXPECT_EQ(result.reason, "cannot be written: File too large");
        EXPECT_EQ(bytes(), old) << size;
        EXPECT_EQ(QDir(folder_.path()).entryList(QDir::Files | QDir::Hidden).size(), 1)
            << "nothing left behind";
        EXPECT_TRUE(document_.isEdited());
    }
    EXPECT_TRUE(document_.save(file_).saved());
}

// There is one version yet, so a document that takes itself to write the next one stands in for it.
TEST_F(Saving, AFileOfAnOlderVersionIsKeptBesideTheUpgradedOneOnce) {
    const std::string old = bytes();
    Document next(nullptr, kCarFileVersion + 1);
    ASSERT_EQ(next.open(file_), QString());
    const SaveResult result = next.save(file_);
    ASSERT_TRUE(result.saved());
    EXPECT_EQ(QFileInfo(result.reason).fileName(), "car (version 1).bolt.json");
    EXPECT_EQ(bytesOf(result.reason.toStdString()), old);
    EXPECT_EQ(next.save(file_).reason, QString()) << "kept once";
}

TEST_F(Saving, WhatWasRecoveredIsEditedAndKnowsWhetherItsFileChanged) {
    const Car edited = document_.car();
    RecoveryRecord record;
    record.file = file_;
    record.fileHash = document_.recoveryPoint({}).fileHash;
    record.carBytes = writeCar(edited, *document_.recoveryPoint({}).source);
    Document next;
    ASSERT_EQ(next.recover(record), QString());
    EXPECT_EQ(next.car(), edited);
    EXPECT_TRUE(next.isEdited());
    EXPECT_EQ(next.fileName(), file_);
    EXPECT_FALSE(next.isChangedElsewhere());
    write(bytes() + " ");
    EXPECT_TRUE(next.isChangedElsewhere());
    EXPECT_EQ(next.save(file_).outcome, SaveResult::Outcome::changedElsewhere);
}

TEST_F(Saving, EveryStepIsSaidInWords) {
    QStringList told;
    QObject::connect(&document_, &Document::stepDone, [&](const QString& what) {
        told.append(what + (document_.isEdited() ? QStringLiteral(" *") : QString()));
    });
    setWheelbase(3.2);
    document_.undoStack().undo();
    document_.undoStack().undo();
    document_.undoStack().redo();
    ASSERT_TRUE(document_.save(file_).saved());
    const QString first = document_.undoStack().text(0);
    const QString second = document_.undoStack().text(1);
    EXPECT_EQ(told, (QStringList{second + " *", "Undone: " + second + " *", "Undone: " + first, first + " *",
                                 "Save"}));
}

}  // namespace
}  // namespace bolthole

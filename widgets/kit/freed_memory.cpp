#include "widgets/kit/freed_memory.h"

#include <QCoreApplication>
#include <QPointer>
#include <QTimer>
#include <fstream>

#ifdef __GLIBC__
#include <malloc.h>
#include <unistd.h>
#endif

namespace bolthole {

namespace {

constexpr int kQuiet = 5000;              // ms without a call
constexpr long kWorthwhile = 67'108'864;  // bytes; see freed_memory.h

// What the process holds of the machine's memory, bytes; 0 where the system does not tell.
long residentBytes() {
#ifdef __GLIBC__
    std::ifstream pages("/proc/self/statm");
    long all = 0;
    long resident = 0;
    return pages >> all >> resident ? resident * sysconf(_SC_PAGESIZE) : 0;
#else
    return 0;
#endif
}

void returnFreedMemory() {
    static long leftAfter = 0;
    if (residentBytes() < leftAfter + kWorthwhile) {
        return;
    }
#ifdef __GLIBC__
    malloc_trim(0);
#endif
    leftAfter = residentBytes();
}

}  // namespace

void returnFreedMemorySoon() {
    static QPointer<QTimer> quiet;
    if (!quiet) {
        quiet = new QTimer(QCoreApplication::instance());
        quiet->setSingleShot(true);
        quiet->setInterval(kQuiet);
        QObject::connect(quiet, &QTimer::timeout, &returnFreedMemory);
    }
    quiet->start();
}

}  // namespace bolthole

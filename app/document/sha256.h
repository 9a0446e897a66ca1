// The hash by which files and records are known again.
#pragma once

#include <QByteArray>
#include <QCryptographicHash>

namespace bolthole {

/// SHA-256 (FIPS 180-4) of `bytes`, 64 hexadecimal digits.
[[nodiscard]] inline QByteArray sha256Of(QByteArrayView bytes) {
    return QCryptographicHash::hash(bytes, QCryptographicHash::Sha256).toHex();
}

}  // namespace bolthole

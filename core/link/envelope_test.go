package link

import (
	"encoding/base64"
	"hash/crc32"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// RFC 4648 §10, its padding off; the digits 62 and 63 from §5.
func TestTextOfBytes(t *testing.T) {
	for data, want := range map[string]string{
		"": "", "f": "Zg", "fo": "Zm8", "foo": "Zm9v", "foob": "Zm9vYg", "fooba": "Zm9vYmE", "foobar": "Zm9vYmFy",
		"\xfb\xff": "-_8",
	} {
		assert.Equal(t, want, toText([]byte(data)))
		assert.Equal(t, data, string(fromText(want)))
	}
}

// Any digits are read as the standard library's decoder reads them, a last one
// that makes no byte left out. Seed 4.
func TestTextAgainstStandardLibrary(t *testing.T) {
	rnd := rand.New(rand.NewSource(4))
	for range 20000 {
		data := make([]byte, rnd.Intn(12))
		rnd.Read(data)
		text := base64.RawURLEncoding.EncodeToString(data)
		assert.Equal(t, text, toText(data))
		text = text[:rnd.Intn(len(text)+1)]
		whole := text
		if len(text)%4 == 1 {
			whole = text[:len(text)-1]
		}
		want, err := base64.RawURLEncoding.DecodeString(whole)
		require.NoError(t, err)
		assert.Equal(t, string(want), string(fromText(text)))
	}
}

// The check value of this CRC over "123456789" is CBF43926, as catalogues of CRCs
// give it (value from memory); the version is its first byte. Seed 5.
func TestSum(t *testing.T) {
	assert.Equal(t, uint32(0xCBF43926), sum('1', []byte("23456789")))
	rnd := rand.New(rand.NewSource(5))
	for range 500 {
		data := make([]byte, 1+rnd.Intn(300))
		rnd.Read(data)
		assert.Equal(t, crc32.ChecksumIEEE(data), sum(data[0], data[1:]))
	}
}

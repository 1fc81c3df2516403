package site

import (
	"encoding/binary"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Added up as the start function does, the differences are the table as it was.
func TestDifferencesAddUp(t *testing.T) {
	full, _ := tracedAndNot(t)
	packed := slices.Clone(full)
	s, err := differences(packed)
	require.NoError(t, err)
	require.NotEqual(t, full, packed)
	sum := uint64(0)
	for at := s.from; at != s.to; at += 8 {
		sum += binary.LittleEndian.Uint64(packed[at:])
		binary.LittleEndian.PutUint64(packed[at:], sum)
		binary.LittleEndian.PutUint32(packed[s.infos+int(sum>>32):], uint32(sum))
	}
	require.Equal(t, full, packed)
}

func TestDifferencesRefuseWhatDoesntStartWhereItSays(t *testing.T) {
	full, _ := tracedAndNot(t)
	table, err := functionsIn(full)
	require.NoError(t, err)
	table.info(7)[0]++
	_, err = differences(full)
	assert.Error(t, err)
	_, err = differences(nil)
	assert.Error(t, err)
}

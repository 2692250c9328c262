/** The lower triangular L with L Lᵀ = A (Cholesky), row by row; what rounding has pushed below zero counts as zero. */
export function factorOf(matrix: readonly (readonly number[])[]): number[][] {
  const factor = matrix.map((row) => row.map(() => 0));
  matrix.forEach((row, i) => {
    for (let j = 0; j <= i; j++) {
      const known = factor[i]!.slice(0, j).reduce((sum, one, k) => sum + one * factor[j]![k]!, 0);
      const rest = row[j]! - known;
      const pivot = factor[j]![j]!;
      if (i === j) factor[i]![i] = Math.sqrt(Math.max(0, rest));
      else factor[i]![j] = pivot > 0 ? rest / pivot : 0;
    }
  });
  return factor;
}

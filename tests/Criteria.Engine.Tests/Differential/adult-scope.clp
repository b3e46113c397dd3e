; DX-19
(deffunction scope.adults () (below (num age) 18))
